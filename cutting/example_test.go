package cutting_test

import (
	"fmt"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// Four drops and a short piece over a door, half-drop match: how many rolls
// must be bought, whatever the design phase the rolls begin with?
func Example() {
	const mm = measure.Millimetre
	pieces := []cutting.Piece{
		{Length: 2600 * mm, Phase: 0},
		{Length: 2600 * mm, Phase: 320 * mm},
		{Length: 2600 * mm, Phase: 0},
		{Length: 480 * mm, Phase: 320 * mm}, // over the door
		{Length: 2600 * mm, Phase: 0},
	}
	p, err := cutting.NewProblem(cutting.Spec{
		Repeat: 640 * mm,
		Roll:   cutting.Roll{Length: 10_050 * mm, Start: cutting.AnyStart},
		Pieces: pieces,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := cutting.Solve(p, cutting.Options{})
	fmt.Println("rolls", len(s.Rolls), "proven", s.Proven, "-", s.Certificate.Reason())
	for i, roll := range s.Rolls {
		for _, c := range roll.Orders[0].Cuts {
			fmt.Printf("roll %d: piece %d ends by %d mm\n", i+1, c.Piece, c.To.CeilTo(mm)/mm)
		}
	}
	// Output:
	// rolls 2 proven true - weights prove 2
	// roll 1: piece 0 ends by 3240 mm
	// roll 1: piece 1 ends by 6120 mm
	// roll 1: piece 2 ends by 9000 mm
	// roll 1: piece 3 ends by 9760 mm
	// roll 2: piece 4 ends by 3240 mm
}

func ExampleNewProblem() {
	const mm = measure.Millimetre
	_, err := cutting.NewProblem(cutting.Spec{
		Roll:   cutting.Roll{Length: 10_050 * mm},
		Pieces: []cutting.Piece{{Length: 2500 * mm}, {Length: 12_000 * mm}},
	})
	fmt.Println(err)
	// Output:
	// cutting: piece 1 (12000000000 nm at phase 0 nm): longer than the roll
}

// A left-over is in hand; new rolls come in two lengths. What must be bought?
func ExampleStock() {
	const mm = measure.Millimetre
	drop := cutting.Piece{Length: 2600 * mm}
	p, err := cutting.NewProblem(cutting.Spec{
		Pieces: []cutting.Piece{drop, drop, drop, drop, drop},
		Stock: []cutting.Stock{
			{Roll: cutting.Roll{Length: 10_050 * mm}, Price: 4800},
			{Roll: cutting.Roll{Length: 5_300 * mm}, Price: 3000},
			{Roll: cutting.Roll{Length: 4_000 * mm}, InHand: true, Count: 1},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := cutting.Solve(p, cutting.Options{})
	fmt.Println("cost", s.Cost, "proven", s.Proven)
	for _, roll := range s.Rolls {
		fmt.Println("stock", roll.Stock, "pieces", len(roll.Orders[0].Cuts))
	}
	// Output:
	// cost 6000 proven true
	// stock 2 pieces 1
	// stock 1 pieces 2
	// stock 1 pieces 2
}

// With the rolls settled, the longest left-over is wanted.
func ExampleGoal() {
	const mm = measure.Millimetre
	var pieces []cutting.Piece
	for _, l := range []measure.Length{2500, 2500, 2500, 2500, 2500, 2500, 2500, 1000, 1000} {
		pieces = append(pieces, cutting.Piece{Length: l * mm})
	}
	p, err := cutting.NewProblem(cutting.Spec{Roll: cutting.Roll{Length: 10_050 * mm}, Pieces: pieces})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := cutting.Solve(p, cutting.Options{Then: []cutting.Goal{cutting.LongestLeftover}})
	fmt.Println("rolls", len(s.Rolls), "left over", s.Goals[0].Value/int64(mm), "mm, proven", s.Goals[0].Proven)
	// Output:
	// rolls 2 left over 550 mm, proven true
}

// Two narrow pieces, one from the left edge of the paper and one from the
// right, come from one length of the roll.
func ExampleSideBySide() {
	const mm = measure.Millimetre
	drop := cutting.Piece{Length: 2500 * mm}
	s, err := cutting.SideBySide(cutting.NarrowSpec{
		Spec:  cutting.Spec{Roll: cutting.Roll{Length: 10_050 * mm}, Pieces: []cutting.Piece{drop, drop, drop}},
		Width: 530 * mm,
		Narrow: []cutting.NarrowPiece{
			{Piece: drop, Across: [2]measure.Length{0, 180 * mm}},
			{Piece: cutting.Piece{Length: 2100 * mm}, Across: [2]measure.Length{400 * mm, 530 * mm}},
		},
	}, cutting.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	rolls, paper := s.Saved()
	fmt.Println(len(s.Solution.Rolls), "roll, proven", s.Proven)
	fmt.Println("saves", rolls, "roll and", int64(paper/mm), "mm")
	// Output:
	// 1 roll, proven true
	// saves 1 roll and 2100 mm
}
