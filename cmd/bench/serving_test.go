package main

import (
	"encoding/json"
	"testing"
)

// The job that is saved and loaded is as large as its name says.
func TestLargeJob(t *testing.T) {
	document, err := largeJob()
	if err != nil {
		t.Fatal(err)
	}
	if !json.Valid(document) || len(document) < jobBytes*9/10 || len(document) > jobBytes*13/10 {
		t.Errorf("it has %d bytes", len(document))
	}
}
