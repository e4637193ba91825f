package main

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/draw/svg"
	"firstdrop/sheet"
)

// files returns what is written into a folder, in the order in which people
// want it: the same plan gives the same bytes. asCut has the cuts listed roll by
// roll.
func (pl *planned) files(asCut bool) ([]outFile, error) {
	n := &namer{taken: map[string]int{}}
	var files []outFile
	add := func(stem, ending string, write func(b *bytes.Buffer) error) error {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			return fmt.Errorf("%s.%s: %w", stem, ending, err)
		}
		files = append(files, outFile{n.name(stem) + "." + ending, b.Bytes()})
		return nil
	}
	if err := add("plan", "json", func(b *bytes.Buffer) error { return writeJSON(b, pl.document()) }); err != nil {
		return nil, err
	}
	if err := pl.tables(add, asCut); err != nil {
		return nil, err
	}
	if err := pl.drawings(add); err != nil {
		return nil, err
	}
	return files, nil
}

// adder adds a file of that name.
type adder = func(stem, ending string, write func(b *bytes.Buffer) error) error

// tables adds the cutting list and the map of the rolls of each paper. Their
// names carry the paper's only where there are several.
func (pl *planned) tables(add adder, asCut bool) error {
	by := sheet.AsHung
	if asCut {
		by = sheet.AsCut
	}
	var used []int
	for i := range pl.plan.Papers {
		if pl.plan.Papers[i].Batches != nil {
			used = append(used, i)
		}
	}
	for _, i := range used {
		suffix := ""
		if len(used) > 1 {
			suffix = "-" + safe(pl.plan.Task.Papers[i].Name)
		}
		err := add("cutting-list"+suffix, "csv", func(b *bytes.Buffer) error { return sheet.CuttingList(b, pl.plan, i, by, pl.lang) })
		if err != nil {
			return err
		}
		err = add("roll-map"+suffix, "csv", func(b *bytes.Buffer) error { return sheet.RollMap(b, pl.plan, i, pl.lang) })
		if err != nil {
			return err
		}
	}
	return nil
}

// drawings adds a drawing of each wall.
func (pl *planned) drawings(add adder) error {
	for r := range pl.plan.Runs {
		run := pl.plan.Runs[r].Layout.Run
		for w := range run.Walls {
			stem := "wall-"
			if len(pl.plan.Runs) > 1 {
				stem += safe(run.Name) + "-"
			}
			err := add(stem+safe(run.WallName(w)), "svg", func(b *bytes.Buffer) error {
				return svg.Write(b, sheet.Wall(pl.plan, r, w, sheet.Options{System: pl.units, Lang: pl.lang}))
			})
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// namer gives every file its own name, on systems too that take capitals and
// small letters for the same: "wall-a", "wall-a-2".
type namer struct{ taken map[string]int }

func (n *namer) name(stem string) string {
	n.taken[stem]++
	for k := n.taken[stem]; k > 1; k++ {
		name := fmt.Sprintf("%s-%d", stem, k)
		if n.taken[name] == 0 {
			n.taken[name]++
			return name
		}
	}
	return stem
}

// mostSafe is how many bytes of a name go into a file's name.
const mostSafe = 80

// safe turns a name into letters, digits and single dashes, in small letters:
// "Chimney breast, left" gives "chimney-breast-left". A name without any gives
// "unnamed".
func safe(name string) string {
	var b strings.Builder
	dash := false
	for _, r := range strings.ToLower(name) {
		switch {
		case !unicode.IsLetter(r) && !unicode.IsDigit(r):
			dash = b.Len() > 0
			continue
		case b.Len()+utf8.RuneLen(r)+1 > mostSafe:
			return b.String()
		case dash:
			b.WriteByte('-')
			dash = false
		}
		b.WriteRune(r)
	}
	if b.Len() == 0 {
		return "unnamed"
	}
	return b.String()
}
