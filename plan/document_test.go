package plan_test

import (
	"slices"
	"testing"

	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// The document says of rolls in hand what is known of them, of each cut its phase
// and wall, and of several kinds of roll what each can carry: the cost that
// follows can be reckoned from that alone.
func TestDocumentOfRollsInHand(t *testing.T) {
	p := made(t, eight(
		paper.Roll{Length: 10_050 * mm, Flaws: []paper.Flaw{{From: 3000 * mm, To: 3050 * mm}}},
		paper.Roll{Parts: []paper.RollPart{{Length: 2600 * mm}, {Length: 2700 * mm}}},
	))
	b := p.Document("").Papers[0].Batches[0]
	at := func(name string) *plan.RollDocument {
		i := slices.IndexFunc(b.Rolls, func(r plan.RollDocument) bool { return r.Name == name })
		if i < 0 {
			t.Fatalf("roll %s is not cut", name)
		}
		return &b.Rolls[i]
	}
	if r := at("1"); !r.InHand || !slices.Equal(r.Flaws, []plan.Stretch{{3000 * mm, 3050 * mm}}) || r.Parts != nil {
		t.Errorf("%+v", r)
	}
	if r := at("2"); !slices.Equal(r.Parts, []measure.Length{2600 * mm}) || r.Orders[0].Cuts[0].Gives[0].Wall == "" {
		t.Errorf("%+v", r)
	}
	sum := int64(0)
	for _, w := range b.Proof.Weights {
		sum += w
	}
	for _, k := range b.Proof.Kinds {
		if k.InHand {
			sum -= k.Capacity // each kind is one roll here
		}
	}
	bought := b.Proof.Kinds[len(b.Proof.Kinds)-1]
	if want := (sum + bought.Capacity - 1) / bought.Capacity; bought.InHand || b.Proof.Cost != want || len(b.Proof.Kinds) != 3 {
		t.Errorf("a cost of %d, want %d, by %+v", b.Proof.Cost, want, b.Proof.Kinds)
	}
}
