package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"firstdrop/draw"
	"firstdrop/draw/dxf"
	"firstdrop/draw/svg"
	"firstdrop/sheet"
)

// files returns what is written into a folder, in the order in which people
// want it: the same plan gives the same bytes. asCut has the cuts listed roll by
// roll. The plan itself is always among them.
func (pl *planned) files(asCut bool, formats formatsFlag) ([]outFile, error) {
	c := &collecting{formats: append(formatsFlag{"json"}, formats...), namer: namer{taken: map[string]int{}}}
	c.add("plan", form{"json", func(b *bytes.Buffer) error { return writeJSON(b, pl.document()) }})
	c.add("lists", form{"xlsx", func(b *bytes.Buffer) error { return sheet.Workbook(b, pl.plan, pl.lang) }})
	pl.tables(c, asCut)
	pl.seams(c)
	pl.drawings(c)
	return c.files, c.err
}

// collecting gathers files of the formats that are asked for.
type collecting struct {
	formats formatsFlag
	namer   namer
	files   []outFile
	err     error // the first
}

// form is one of the formats that something can be written in.
type form struct {
	ending string
	write  func(b *bytes.Buffer) error
}

// add adds a file of that name for each form that is asked for.
func (c *collecting) add(stem string, forms ...form) {
	name := ""
	for _, f := range forms {
		if c.err != nil || !slices.Contains(c.formats, f.ending) {
			continue
		}
		if name == "" {
			name = c.namer.name(stem)
		}
		var b bytes.Buffer
		if err := f.write(&b); err != nil {
			c.err = fmt.Errorf("%s.%s: %w", name, f.ending, err)
		}
		c.files = append(c.files, outFile{name + "." + f.ending, b.Bytes()})
	}
}

// tables adds the cutting list and the map of the rolls of each paper. Their
// names carry the paper's only where there are several.
func (pl *planned) tables(c *collecting, asCut bool) {
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
		c.add("cutting-list"+suffix, form{"csv", func(b *bytes.Buffer) error { return sheet.CuttingList(b, pl.plan, i, by, pl.lang) }})
		c.add("roll-map"+suffix, form{"csv", func(b *bytes.Buffer) error { return sheet.RollMap(b, pl.plan, i, pl.lang) }})
	}
}

// seams adds the list of seams as hung and dry, where a paper grows.
func (pl *planned) seams(c *collecting) {
	if sheet.HasSeamTable(pl.plan) {
		c.add("seams", form{"csv", func(b *bytes.Buffer) error { return sheet.SeamList(b, pl.plan, pl.lang) }})
	}
}

// drawings adds a drawing of each wall.
func (pl *planned) drawings(c *collecting) {
	for r := range pl.plan.Runs {
		run := pl.plan.Runs[r].Layout.Run
		for w := range run.Walls {
			stem := "wall-"
			if len(pl.plan.Runs) > 1 {
				stem += safe(run.Name) + "-"
			}
			scene := sync.OnceValue(func() *draw.Scene {
				return sheet.Wall(pl.plan, r, w, sheet.Options{System: pl.units, Lang: pl.lang})
			})
			c.add(stem+safe(run.WallName(w)),
				form{"svg", func(b *bytes.Buffer) error { return svg.Write(b, scene()) }},
				form{"dxf", func(b *bytes.Buffer) error { return dxf.Write(b, scene()) }})
		}
	}
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
