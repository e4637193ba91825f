package main

import "testing"

// Every room of the house can be planned.
func TestHouse(t *testing.T) {
	for i := range chambers {
		if _, s, err := set(chambers[i].name, []byte(chambers[i].job())); err != nil || len(s.Plan.Runs) != 1 {
			t.Errorf("%s: %v", chambers[i].name, err)
		}
	}
	if len(chambers) != 12 {
		t.Errorf("%d rooms", len(chambers))
	}
}
