package paper_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/measure"
	"firstdrop/paper"
)

const (
	mm = measure.Millimetre
	cm = measure.Centimetre
)

// ferns is a sound invented label.
func ferns() *paper.Paper {
	return &paper.Paper{
		Name: "Ferns", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm,
		Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2},
		Motif: &paper.Motif{Axis: 265 * mm, Head: 40 * mm, Tall: 400 * mm},
		Pack:  1, Tolerance: paper.StandardTolerance(530*mm, 10050*mm),
	}
}

// anyPaper draws a sound label of any match.
func anyPaper(t *rapid.T) *paper.Paper {
	p := ferns()
	p.Repeat = measure.Length(rapid.Int64Range(2, int64(4*measure.Metre)).Draw(t, "repeat"))
	p.Motif.Axis = measure.Length(rapid.Int64Range(0, int64(p.Width)).Draw(t, "axis"))
	p.Motif.Head, p.Motif.Tall = p.Repeat/3, p.Repeat/2
	p.Match = paper.Match{Kind: rapid.SampledFrom([]paper.MatchKind{paper.Free, paper.Straight, paper.Offset}).Draw(t, "kind")}
	p.Match.Reversing = rapid.Bool().Draw(t, "reversing")
	switch {
	case p.Match.Kind == paper.Free:
		p.Repeat, p.Motif = 0, nil
	case p.Match.Kind == paper.Straight:
	case rapid.Bool().Draw(t, "by length"):
		p.Match.Length = measure.Length(rapid.Int64Range(1, int64(p.Repeat)-1).Draw(t, "offset"))
	default:
		p.Match.Den = rapid.SampledFrom([]int64{2, 3, 4, 5, 7, 11, 13}).Draw(t, "den")
		p.Match.Num = rapid.Int64Range(1, p.Match.Den-1).Filter(func(n int64) bool { return p.Match.Den != 4 || n != 2 }).Draw(t, "num")
	}
	if err := p.Check(); err != nil {
		t.Fatalf("the drawn paper is not sound: %v", err)
	}
	return p
}

func TestMirroredTwiceIsTheSamePaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		if diff := cmp.Diff(p, p.Mirrored().Mirrored()); diff != "" {
			t.Fatal(diff)
		}
		if err := p.Mirrored().Check(); err != nil {
			t.Fatalf("mirrored: %v", err)
		}
	})
}

func TestMirroredDropsStandOnTheOtherSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPaper(t)
		i := rapid.IntRange(-1_000_000, 1_000_000).Draw(t, "i")
		if got, want := p.Mirrored().Shift(i), p.Shift(-i); got != want {
			t.Fatalf("mirrored Shift(%d) = %v, want %v", i, got, want)
		}
	})
}

func TestMirroredSharesNothing(t *testing.T) {
	p := ferns()
	p.Mirrored().Motif.Head = 0
	if p.Motif.Head != 40*mm {
		t.Error("a change of the mirrored paper changed the paper")
	}
}

func TestPasteReadsBack(t *testing.T) {
	for _, p := range []paper.Paste{paper.PasteTheWall, paper.PasteThePaper, paper.ReadyPasted, paper.SelfAdhesive} {
		back, text := paper.PasteTheWall, []byte(p.String())
		if err := back.UnmarshalText(text); err != nil || back != p {
			t.Errorf("%s reads back as %v, %v", text, back, err)
		}
	}
	p := paper.SelfAdhesive
	if err := p.UnmarshalText([]byte("glue")); err == nil || p != paper.SelfAdhesive {
		t.Errorf("glue reads as %v, %v", p, err)
	}
}

func TestPasteNames(t *testing.T) {
	for p, want := range map[paper.Paste]string{
		paper.PasteTheWall: "wall", paper.PasteThePaper: "paper", paper.ReadyPasted: "ready", paper.SelfAdhesive: "self", 9: "unknown paste",
	} {
		if got := p.String(); got != want {
			t.Errorf("%d = %q, want %q", p, got, want)
		}
	}
}
