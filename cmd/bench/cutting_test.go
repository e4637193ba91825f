package main

import "testing"

// What the go command prints of the cutting package's benchmarks is read whole,
// and each figure finds its goal.
func TestCuttingFigures(t *testing.T) {
	const text = `goos: linux
BenchmarkFigureRooms/known-2         	       1	1234567 ns/op	        12.50 µs-median	      2000 proven
BenchmarkFigureHotels/plain-5-kinds/known-2         	       1	 99 ns/op	         2.000 gap
BenchmarkFigurePricing    	       1	 99 ns/op	         0 allocations
PASS
`
	got, err := cuttingFigures(text)
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		name string
		met  bool
	}{
		{"cutting: Rooms/known µs-median", true},
		{"cutting: Rooms/known proven", true},
		{"cutting: Hotels/plain-5-kinds/known gap", false},
		{"cutting: Pricing allocations", true},
	}
	if len(got) != len(want) {
		t.Fatalf("%d figures, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if f := got[i].judged(); f.Name != w.name || f.Met == nil || *f.Met != w.met {
			t.Errorf("%+v, want %+v", f, w)
		}
	}
	if _, err := cuttingFigures("PASS\n"); err == nil {
		t.Error("no figures at all is not an error")
	}
}
