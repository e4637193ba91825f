package hanging_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// Every layout passes the audit, whatever the fuzzer makes of room, paper and
// choice.
func FuzzLayout(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) { drawn(t) }))
}

// drawn lays out a run, paper and choice that rapid makes up, and has the layout
// audited.
func drawn(t *rapid.T) (*room.Run, *paper.Paper, *hanging.Layout) {
	r, p := anyroom.Run(t), anyroom.Paper(t)
	h, err := hanging.New(r, p, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(anyroom.Choice(t, r, p))
	if err != nil {
		t.Skip(err)
	}
	for _, v := range audit.Layout(l) {
		t.Errorf("audit: %v\n%s\n%+v", v, parts(l), l.Plumbs)
	}
	return r, p, l
}

// Seen in a mirror, room, paper and choice give the layout seen in a mirror.
// Which drop is numbered next, and by which edge a drop in mid-wall is set
// plumb, is a matter of hand and is left out.
func TestMirroredRoomGivesMirroredLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p, l := drawn(t)
		mr, mp := r.Mirrored(), p.Mirrored()
		h, err := hanging.New(mr, mp, hanging.DefaultRules())
		if err != nil {
			t.Fatal(err)
		}
		m, err := h.Layout(anyroom.Mirrored(l.Choice, r, p))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(mirroredDrops(l), plainDrops(m)); diff != "" {
			t.Fatalf("drops of the mirrored room (-mirrored +got):\n%s", diff)
		}
		if diff := cmp.Diff(mirroredPieces(l), plainPieces(m)); diff != "" {
			t.Fatalf("pieces of the mirrored room (-mirrored +got):\n%s", diff)
		}
		// Thirds of a repeat are rounded once for every drop, so their difference
		// may be a nanometre off the mirror's.
		nanometre := cmp.Comparer(func(a, b measure.Length) bool { return (a - b).Abs() <= 1 })
		if diff := cmp.Diff(mirroredSeams(l), plainSeams(m), nanometre); diff != "" {
			t.Fatalf("seams of the mirrored room (-mirrored +got):\n%s", diff)
		}
	})
}

func plainDrops(l *hanging.Layout) []hanging.Drop {
	ds := slices.Clone(l.Drops)
	for i := range ds {
		ds[i].Number = 0
	}
	return ds
}

func mirroredDrops(l *hanging.Layout) []hanging.Drop {
	n, w := len(l.Run.Walls), l.Paper.Width
	ds := plainDrops(l)
	slices.Reverse(ds)
	for i := range ds {
		d := &ds[i]
		d.Index = -d.Index
		parts := slices.Clone(d.Parts)
		for k := range parts {
			q := &parts[k]
			width := l.Run.Walls[q.Wall].Width
			q.X = geom.Interval{Lo: width - q.X.Hi, Hi: width - q.X.Lo}
			q.Across = geom.Interval{Lo: w - q.Across.Hi, Hi: w - q.Across.Lo}
			q.Skew = -q.Skew
			q.Wall = n - 1 - q.Wall
			q.Joined = k+1 < len(parts) && d.Parts[k+1].Joined
		}
		slices.Reverse(parts)
		d.Parts = parts
	}
	return ds
}

// cutPiece is what mirroring leaves alone in a piece, and how much of the
// drop's width it needs.
type cutPiece struct {
	Drop                int
	Y                   geom.Interval
	Width, Length, Lead measure.Length
	Phase               measure.Length
	Return              bool
}

func plainPieces(l *hanging.Layout) []cutPiece { return pieces(l, 1) }

func mirroredPieces(l *hanging.Layout) []cutPiece { return pieces(l, -1) }

func pieces(l *hanging.Layout, sign int) []cutPiece {
	var ps []cutPiece
	for _, p := range l.Pieces {
		ps = append(ps, cutPiece{
			sign * l.Drops[p.Drop].Index, p.Y, p.Across.Length(), p.Length, p.Lead, p.Phase, p.Return != nil,
		})
	}
	slices.SortFunc(ps, func(a, b cutPiece) int {
		for _, d := range []measure.Length{
			measure.Length(a.Drop - b.Drop), a.Y.Lo - b.Y.Lo, a.Y.Hi - b.Y.Hi, a.Width - b.Width,
		} {
			if d != 0 {
				return int(d.Abs() / d)
			}
		}
		return 0
	})
	return ps
}

// meeting is what mirroring leaves alone in a seam.
type meeting struct {
	Kind   hanging.SeamKind
	Across geom.Interval
	Along  measure.Length
}

func plainSeams(l *hanging.Layout) []meeting {
	var ms []meeting
	for _, s := range l.Seams {
		ms = append(ms, meeting{s.Kind, s.Across, s.Along})
	}
	return ms
}

func mirroredSeams(l *hanging.Layout) []meeting {
	ms := plainSeams(l)
	body := ms
	if l.Choice.Kill.Kind != hanging.NoKill {
		body = ms[:len(ms)-1]
	}
	slices.Reverse(body)
	for i := range ms {
		// An offset of exactly half the repeat is the same both ways.
		if 2*ms[i].Along != l.Paper.Repeat {
			ms[i].Along = -ms[i].Along
		}
	}
	return ms
}

// All the paper of a drop is used once, from edge to edge, unless it is trimmed
// at an end, at the kill seam, or given up in a corner.
func TestDropsAreUsedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, l := drawn(t)
		for i, d := range l.Drops {
			for k := 1; k < len(d.Parts); k++ {
				if d.Parts[k].Across.Lo != d.Parts[k-1].Across.Hi {
					t.Fatalf("drop %d: part %d begins at %v of the width, the one before ends at %v",
						d.Index, k, d.Parts[k].Across.Lo, d.Parts[k-1].Across.Hi)
				}
			}
			first, last := d.Parts[0].Across.Lo, d.Parts[len(d.Parts)-1].Across.Hi
			if first != 0 && i != 0 || last != p.Width && i != len(l.Drops)-1 {
				t.Fatalf("drop %d covers %v to %v of its width within the run", d.Index, first, last)
			}
		}
	})
}
