package geom

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestCellsOfUprightRooms(t *testing.T) {
	all := Interval{-1000, 1000}
	for _, c := range []struct {
		name    string
		polygon string
		x       Interval
		want    string
	}{
		{"a plain wall", "0,0..8,3", all, `
			aaaaaaaa
			aaaaaaaa
			aaaaaaaa
			`},
		{"a plain wall, corners the other way round", "0,3 8,3 8,0 0,0", all, `
			aaaaaaaa
			aaaaaaaa
			aaaaaaaa
			`},
		{"a stretch of it", "0,0..8,3", Interval{2, 5}, `
			..aaa...
			..aaa...
			..aaa...
			`},
		{"a window", "0,0..8,5 - 2,2..6,4", all, `
			aaccccdd
			aa....dd
			aa....dd
			aabbbbdd
			aabbbbdd
			`},
		{"a stretch that ends in the window", "0,0..8,5 - 2,2..6,4", Interval{1, 4}, `
			.acc....
			.a......
			.a......
			.abb....
			.abb....
			`},
		{"a door on the floor", "0,0..8,5 - 2,0..5,4", all, `
			aabbbccc
			aa...ccc
			aa...ccc
			aa...ccc
			aa...ccc
			`},
		{"a door that pokes out below", "0,0..8,5 - 2,-3..5,4", all, `
			aabbbccc
			aa...ccc
			aa...ccc
			aa...ccc
			aa...ccc
			`},
		{"from floor to ceiling", "0,0..8,3 - 3,0..5,3", all, `
			aaa..bbb
			aaa..bbb
			aaa..bbb
			`},
		{"in a corner", "0,0..8,3 - 6,1..8,3", all, `
			aaaaaa..
			aaaaaa..
			aaaaaabb
			`},
		{"two windows that overlap", "0,0..8,5 - 1,1..5,3 - 3,2..7,4", all, `
			acceeggh
			acc....h
			a......h
			a....ffh
			abbddffh
			`},
		{"two windows one above the other, touching", "0,0..6,5 - 1,1..5,2 - 1,2..5,4", all, `
			accccd
			a....d
			a....d
			a....d
			abbbbd
			`},
		{"two windows side by side, touching", "0,0..6,3 - 1,1..3,2 - 3,1..5,2", all, `
			acceef
			a....f
			abbddf
			`},
		{"a hole in a hole, which brings its uprights", "0,0..6,5 - 1,1..5,4 - 2,2..3,3", all, `
			aceggh
			a....h
			a....h
			a....h
			abdffh
			`},
		{"nothing left", "0,0..6,2 - -1,-1..7,3", all, `
			......
			......
			`},
		{"a hole beside the wall", "0,0..4,2 - 6,0..8,1", all, `
			aaaa
			aaaa
			`},
		{"steps", "0,0 2,0 2,1 4,1 4,0 6,0 6,3 3,3 3,4 0,4", all, `
			aab...
			aabcdd
			aabcdd
			aa..dd
			`},
		{"a straight edge with a corner in it", "0,0 3,0 6,0 6,2 0,2", all, `
			aaabbb
			aaabbb
			`},
		{"an empty stretch", "0,0..4,2", Interval{3, 2}, `
			....
			....
			`},
		{"a single position", "0,0..4,2", Interval{2, 2}, `
			....
			....
			`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := parsePolygon(t, c.polygon)
			want := undent(c.want)
			width := strings.Index(want, "\n")
			height := len(want) / (width + 1)
			if diff := cmp.Diff(want, picture(p.Cells(c.x), width, height)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestCellsOfSlantedRooms(t *testing.T) {
	for _, c := range []struct {
		name    string
		polygon string
		x       Interval
		want    []Cell
	}{
		{"an attic wall", "0,0 8,0 8,4 5,4 0,2", Interval{-9, 9}, []Cell{
			{Interval{0, 5}, Interval{0, 2}, Interval{0, 4}},
			{Interval{5, 8}, Interval{0, 4}, Interval{0, 4}},
		}},
		{"its heights rounded, halves up", "0,0 8,0 8,4 5,4 0,2", Interval{1, 3}, []Cell{
			{Interval{1, 3}, Interval{0, 2}, Interval{0, 3}}, // 2.4 and 3.2
		}},
		{"a gable with a window under the ridge", "0,0 8,0 8,2 4,6 0,2 - 3,2..5,4", Interval{-9, 9}, []Cell{
			{Interval{0, 3}, Interval{0, 2}, Interval{0, 5}},
			{Interval{3, 4}, Interval{0, 2}, Interval{0, 2}},
			{Interval{3, 4}, Interval{4, 5}, Interval{4, 6}},
			{Interval{4, 5}, Interval{0, 2}, Interval{0, 2}},
			{Interval{4, 5}, Interval{4, 6}, Interval{4, 5}},
			{Interval{5, 8}, Interval{0, 5}, Interval{0, 2}},
		}},
		{"a lozenge, with points left and right", "0,2 4,0 8,4 4,6", Interval{0, 8}, []Cell{
			{Interval{0, 4}, Interval{2, 2}, Interval{0, 6}},
			{Interval{4, 8}, Interval{0, 6}, Interval{4, 4}},
		}},
		{"a window that pokes through the slope at a whole place", "0,0 8,0 8,8 0,0 - 2,2..8,4", Interval{0, 8}, []Cell{
			{Interval{0, 2}, Interval{0, 0}, Interval{0, 2}},
			{Interval{2, 4}, Interval{0, 2}, Interval{0, 2}},
			{Interval{4, 8}, Interval{0, 2}, Interval{0, 2}},
			{Interval{4, 8}, Interval{4, 4}, Interval{4, 8}},
		}},
		{"and at 4.5, between two uprights 1 nm apart", "0,0 18,0 18,12 0,0 - 0,1..18,3", Interval{3, 8}, []Cell{
			{Interval{3, 4}, Interval{0, 1}, Interval{0, 1}},
			{Interval{4, 5}, Interval{0, 1}, Interval{0, 1}},
			{Interval{5, 8}, Interval{0, 1}, Interval{0, 1}},
			{Interval{5, 8}, Interval{3, 3}, Interval{3, 5}},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := parsePolygon(t, c.polygon)
			if diff := cmp.Diff(c.want, p.Cells(c.x)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestParcels(t *testing.T) {
	for _, c := range []struct {
		name    string
		polygon string
		want    []int
		n       int
	}{
		{"none", "0,0..0,0", nil, 0},
		{"a plain wall", "0,0..8,3", []int{0}, 1},
		{"round a window", "0,0..8,5 - 2,2..6,4", []int{0, 0, 0, 0}, 1},
		{"under and over a window", "2,0..6,5 - 2,2..6,4", []int{0, 1}, 2},
		{"left and right of a door as high as the wall", "0,0..8,5 - 3,0..5,5", []int{0, 1}, 2},
		{"joined at the end only", "0,0..8,5 - 0,2..6,4", []int{0, 0, 0}, 1},
		{"joined late: three arms", "0,0..8,7 - 0,1..6,2 - 0,4..7,5", []int{0, 0, 0, 0, 0, 0}, 1},
		{"two of three arms joined", "0,0..7,7 - 0,1..6,2 - 0,4..7,5", []int{0, 0, 1, 0, 1}, 2},
		{"touching at a point", "0,0..8,4 - 0,2..4,4 - 4,0..8,2", []int{0, 1}, 2},
		{"touching by a hair", "0,0..8,4 - 0,2..4,4 - 4,0..8,1", []int{0, 0}, 1},
		{"two teeth of a comb", "0,0 6,0 6,1 4,4 3,1 2,4 0,1", []int{0, 0, 0, 0}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			cells := parsePolygon(t, c.polygon).Cells(Interval{-9, 99})
			got, n := Parcels(cells)
			if len(got) == 0 {
				got = nil
			}
			if diff := cmp.Diff(c.want, got); diff != "" || n != c.n {
				t.Errorf("%d parcels (-want +got)\n%s", n, diff)
			}
		})
	}
}
