package sheet_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/page"
	"firstdrop/draw/text"
	"firstdrop/internal/oracle"
	"firstdrop/measure"
	"firstdrop/sheet"
	"firstdrop/words"
)

// setOf makes the set of a job. Pictures are the demo designs that it names.
func setOf(t testing.TB, name string, data []byte) sheet.Set {
	t.Helper()
	j, p := planned(t, name, data)
	set := sheet.Set{Job: j.Name, Plan: p, System: j.Units.System(), Jobs: 40, Repeats: make([]*draw.Picture, len(j.Papers))}
	for i := range j.Papers {
		if d, ok := design.Named(j.Papers[i].Picture); ok {
			repeat, err := d.Picture(p.Task.Papers[i].Width, p.Task.Papers[i].Repeat, 90)
			if err != nil {
				t.Fatal(err)
			}
			set.Repeats[i] = repeat
		}
	}
	return set
}

func eachExample(t *testing.T, do func(t *testing.T, set sheet.Set)) {
	t.Helper()
	files, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(files) < 18 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			do(t, setOf(t, file, data))
		})
	}
}

// Every page of every example, on A4 and on Letter: no words leave their room or the
// page, none lie over others, and the ruler is there.
func TestPagesOfExamples(t *testing.T) {
	eachExample(t, func(t *testing.T, set sheet.Set) {
		for _, set.Format = range []draw.Format{draw.A4, draw.Letter} {
			book, err := set.Book(sheet.Kinds()...)
			if err != nil {
				t.Fatal(err)
			}
			checkBook(t, book)
			if n := len(book.Pages); n < 8 {
				t.Errorf("only %d pages for %d sheets", n, len(sheet.Kinds()))
			}
		}
	})
}

// The same in every language, on the paper that is usual there; and where that is
// A4, no words are cut off that English has room for.
func TestPagesInEveryLanguage(t *testing.T) {
	eachExample(t, func(t *testing.T, set sheet.Set) {
		english, err := set.Book(sheet.Kinds()...)
		if err != nil {
			t.Fatal(err)
		}
		for _, tag := range words.Languages()[1:] {
			set.Lang = words.For(tag)
			book, err := set.Book(sheet.Kinds()...)
			if err != nil {
				t.Fatal(err)
			}
			checkBook(t, book)
			if cut := cutOff(book); book.Format == english.Format && len(cut) > len(cutOff(english)) {
				t.Errorf("%s: %d words cut off, %d in English: %q", tag, len(cut), len(cutOff(english)), cut)
			}
		}
	})
}

// cutOff lists the words that end in an ellipsis, but for the job's name.
func cutOff(book *page.Book) (cut []string) {
	for _, s := range book.Scenes() {
		s.Walk(func(_ string, it draw.Item) {
			if x, ok := it.(draw.Text); ok && strings.HasSuffix(x.Text, "…") && !strings.HasPrefix(book.Job, strings.TrimSuffix(x.Text, "…")) {
				cut = append(cut, x.Text)
			}
		})
	}
	return cut
}

func checkBook(t *testing.T, book *page.Book) {
	t.Helper()
	for i, s := range book.Scenes() {
		checkRooms(t, i, book.Pages[i])
		checkScene(t, i, s)
	}
}

// checkRooms holds every text of a page to the room that it was given.
func checkRooms(t *testing.T, i int, p *page.Page) {
	t.Helper()
	for _, r := range p.Rooms {
		if w := text.Width(r.Text.Text, r.Text.Size, r.Text.Bold); w > r.Box.X.Length() {
			t.Errorf("page %d (%s): %q is %v wide in a room of %v", i+1, p.Title, r.Text.Text, w, r.Box.X.Length())
		}
		if r.Text.At.Y < r.Box.Y.Lo || r.Text.At.Y > r.Box.Y.Hi {
			t.Errorf("page %d (%s): %q stands outside its room", i+1, p.Title, r.Text.Text)
		}
	}
}

// inked returns the box that a text's letters fill: as wide as they are, as high as
// figures and small letters are.
func inked(x draw.Text) draw.Box {
	w := text.Width(x.Text, x.Size, x.Bold)
	lo := measure.Length(0)
	switch x.Anchor {
	case draw.Middle:
		lo = -w / 2
	case draw.End:
		lo = -w
	}
	if x.Turn == draw.Upwards {
		return draw.BoxAt(x.At.X-x.Size*7/10, x.At.Y+lo, x.Size*7/10, w)
	}
	return draw.BoxAt(x.At.X+lo, x.At.Y, w, x.Size*7/10)
}

func checkScene(t *testing.T, i int, s *draw.Scene) {
	t.Helper()
	var texts []draw.Text
	ruler := false
	s.Walk(func(_ string, it draw.Item) {
		switch it := it.(type) {
		case draw.Text:
			texts = append(texts, it)
		case draw.Line:
			b := it.Box()
			ruler = ruler || len(it.Points) == 2 && b.X.Length() == 4*measure.Inch && b.Y.Length() == 0
		}
	})
	if !ruler {
		t.Errorf("page %d (%s) has no check ruler", i+1, s.Title)
	}
	boxes := make([]draw.Box, len(texts))
	for k, a := range texts {
		b := inked(a)
		boxes[k] = b.Grown(-mm / 5)
		if !s.Window.Grown(-2 * mm).Contains(b) {
			t.Errorf("page %d (%s): %q runs off the page: %v in %v", i+1, s.Title, a.Text, b, s.Window)
		}
		for m := range k {
			if boxes[k].Overlaps(boxes[m]) {
				t.Errorf("page %d (%s): %q lies over %q", i+1, s.Title, a.Text, texts[m].Text)
			}
		}
	}
}

// twelveThirtySeven is a room with a seam at 1,237 mm on its first wall.
const twelveThirtySeven = `firstdrop: 1
name: Seam room (invented)
units: mm
room:
  height: 2400
  closed: true
  walls: [{name: A, width: 4000}, {name: B, width: 3000}, {name: C, width: 4000}, {name: D, width: 3000}]
papers: [{name: Limewash (invented), width: 530, roll: 10.05 m, repeat: 320, match: half drop, picture: quince}]
hang: [{paper: Limewash (invented), start: {wall: A, edge: 1237}}]
`

// The seam at 1,237 mm stands 61.85 mm from the wall's left end at 1:20.
func TestSeamStandsAtScaleOnItsPage(t *testing.T) {
	set := setOf(t, "seam.yaml", []byte(twelveThirtySeven))
	set.Scale, set.Format = 20, draw.A3
	book, err := set.Book(sheet.HangingSheet)
	if err != nil {
		t.Fatal(err)
	}
	s := book.Scenes()[1]
	if book.Pages[1].Title != "Wall A" || book.Pages[1].Scale != "1:20" {
		t.Fatalf("second page is %q at %q", book.Pages[1].Title, book.Pages[1].Scale)
	}
	var wall draw.Box
	seams := map[measure.Length]bool{}
	s.Walk(func(_ string, it draw.Item) {
		switch it := it.(type) {
		case draw.Area:
			if b := it.Box(); b.X.Length() == 200*mm && b.Y.Length() == 120*mm {
				wall = b
			}
		case draw.Line:
			if b := it.Box(); b.X.Length() == 0 && b.Y.Length() == 120*mm {
				seams[b.X.Lo] = true
			}
		}
	})
	if at := wall.X.Lo + 61_850*measure.Micrometre; wall.IsEmpty() || !seams[at] {
		t.Errorf("no seam 61.85 mm from the wall's left end at %v; upright lines stand at %v", wall.X.Lo, seams)
	}
}

// On every drop the picture begins at a height at which the paper's own rule says
// that the repeat begins, and its left edge stands at the drop's.
func TestDesignHangsAtItsPhase(t *testing.T) {
	for _, data := range []string{twelveThirtySeven, strings.Replace(twelveThirtySeven, "half drop", "offset 1/3", 1), strings.Replace(twelveThirtySeven, "half drop", "straight, reversing: true", 1)} {
		set := setOf(t, "seam.yaml", []byte(data))
		l := set.Plan.Runs[0].Layout
		s := sheet.Wall(set.Plan, 0, 0, sheet.Options{Scale: 20, Repeat: set.Repeats[0]})
		tiles := map[measure.Length]draw.Tile{}
		s.Walk(func(_ string, it draw.Item) {
			if tile, ok := it.(draw.Tile); ok {
				tiles[tile.At.X] = tile
			}
		})
		for _, d := range l.Drops {
			for _, p := range d.Parts {
				if p.Wall != 0 || p.X.Lo < 0 {
					continue
				}
				tile, ok := tiles[(p.X.Lo-p.Across.Lo).Scaled(1, 20)]
				if !ok {
					t.Errorf("drop %d has no design at its left edge %v", d.Number, p.X.Lo-p.Across.Lo)
					continue
				}
				off := l.Paper.Phase(d.Index, l.Choice.Design, tile.At.Y*20)
				if off = min(off, l.Paper.Repeat-off); off > 20 || tile.UpsideDown != d.Reversed {
					t.Errorf("drop %d: the picture begins %v off the repeat, upside down %v", d.Number, off, tile.UpsideDown)
				}
			}
		}
	}
}

// A drop that has turned a leaning corner leans: its design is set off with height by
// no more than a tenth of a millimetre of paper from band to band, and by the whole
// skew from foot to head, less half a band at either end.
func TestDesignLeansWithItsDrop(t *testing.T) {
	data := strings.NewReplacer(
		"{name: A, width: 4000}", "{name: A, width: 4000, corner: {kind: outside, angle: 225, lean: {left: 2, right: -1}}}", "closed: true", "closed: false",
		"start: {wall: A, edge: 1237}", "start: {wall: A, edge: 3700}").Replace(twelveThirtySeven)
	set := setOf(t, "lean.yaml", []byte(data))
	leaning := 0
	for w := range set.Plan.Runs[0].Layout.Run.Walls {
		s := sheet.Wall(set.Plan, 0, w, sheet.Options{Scale: 5, Width: 900 * mm, Repeat: set.Repeats[0]})
		l := set.Plan.Runs[0].Layout
		for _, d := range l.Drops {
			for _, p := range d.Parts {
				if p.Wall != w || p.Skew == 0 {
					continue
				}
				leaning++
				checkLean(t, s, (p.X.Lo-p.Across.Lo).Scaled(1, 5), p.Skew.Scaled(1, 5))
			}
		}
	}
	if leaning == 0 {
		t.Fatal("no drop turns the leaning corner in this room")
	}
}

// checkLean finds the bands of the drop whose left edge stands at edge at its foot.
func checkLean(t *testing.T, s *draw.Scene, edge, skew measure.Length) {
	t.Helper()
	lo, hi, n := measure.MaxLength, -measure.MaxLength, 0
	s.Walk(func(_ string, it draw.Item) {
		tile, ok := it.(draw.Tile)
		if off := tile.At.X - edge; ok && off.Abs() <= skew.Abs() {
			lo, hi, n = min(lo, off), max(hi, off), n+1
		}
	})
	if n < 2 || (hi-lo+skew.Abs()/measure.Length(n)-skew.Abs()).Abs() > measure.Micrometre || skew.Abs()/measure.Length(n) > 2*mm/10 {
		t.Errorf("%d bands set off by %v to %v for a skew of %v", n, lo, hi, skew)
	}
}

// What readers of PDF say: the file is valid and its words can be found.
func TestPDFOfSheets(t *testing.T) {
	data, err := os.ReadFile("../examples/door-and-windows.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := setOf(t, "room.yaml", data).Document(sheet.Kinds()...)
	if err != nil {
		t.Fatal(err)
	}
	var b, again bytes.Buffer
	if err := d.Write(&b); err != nil {
		t.Fatal(err)
	}
	d, err = setOf(t, "room.yaml", data).Document(sheet.Kinds()...)
	if err != nil || d.Write(&again) != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
		t.Error("the same job gives other bytes:", err)
	}
	file := filepath.Join(t.TempDir(), "sheets.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	oracle.Run(t, "qpdf", "--check", file)
	if info := oracle.Run(t, "pdfinfo", file); !strings.Contains(info, "Tagged:          yes") && !strings.Contains(strings.Join(strings.Fields(info), " "), "Tagged: yes") {
		t.Error("not tagged:", info)
	}
	words := strings.Join(strings.Fields(oracle.Run(t, "pdftotext", "-layout", file, "-")), " ")
	for _, want := range []string{
		"Back bedroom (invented)", "Hanging plan", "Cutting list", "Roll map", "Step by step", "Hand-over record", "Survey",
		"bedside socket", "9 rolls", "switch the circuit off at the board", "soaks 8 minutes", "480 mm into the repeat", "Wall D",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("pdftotext finds no %q", want)
		}
	}
	if b.Len() > 1<<20 {
		t.Errorf("%d bytes, more than a megabyte", b.Len())
	}
}

// A survey sheet needs no job.
func TestSurveyOfNothing(t *testing.T) {
	for _, sys := range []measure.System{measure.Metric, measure.Imperial} {
		book, err := sheet.Set{System: sys}.Book(sheet.SurveySheet)
		if err != nil {
			t.Fatal(err)
		}
		checkBook(t, book)
		if n := len(book.Pages); n < 2 || n > 4 {
			t.Errorf("%d pages", n)
		}
	}
	if _, err := (sheet.Set{}).Book(sheet.StepSheet); err == nil {
		t.Error("steps without a plan")
	}
}

func TestOddNamesOnPages(t *testing.T) {
	long := strings.Repeat("Wohnzimmer", 30)
	for _, name := range []string{"غرفة الجلوس (أ)", "חדר שינה 3", "🧻👷🏽‍♀️ 壁紙", long, strings.Repeat("W ", 149) + "W", "e\u0301\u0301\u0301x"} {
		data := strings.NewReplacer("Seam room (invented)", name, "name: A", "name: '"+clip(name, 60)+"'", "wall: A", "wall: '"+clip(name, 60)+"'", "Limewash (invented)", "'"+clip(name, 100)+"'").Replace(twelveThirtySeven)
		book, err := setOf(t, "odd.yaml", []byte(data)).Book(sheet.Kinds()...)
		if err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		checkBook(t, book)
	}
}

func clip(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return strings.TrimSpace(string(r[:n]))
	}
	return s
}

// Labels of every grid lie on the page and in their own cell, one for each piece.
func TestLabelGrids(t *testing.T) {
	set := setOf(t, "seam.yaml", []byte(twelveThirtySeven))
	pieces := len(set.Plan.Runs[0].Layout.Pieces)
	for _, g := range append(sheet.Grids(), sheet.Grid{}) {
		set.Labels = g
		book, err := set.Book(sheet.LabelSheet)
		if err != nil {
			t.Fatal(err)
		}
		checkBook(t, book)
		tops := 0
		for _, s := range book.Scenes() {
			s.Walk(func(_ string, it draw.Item) {
				if x, ok := it.(draw.Text); ok && x.Text == "TOP" {
					tops++
				}
			})
		}
		if tops != pieces {
			t.Errorf("grid %q: %d labels for %d pieces", g.Name, tops, pieces)
		}
		if w := g.Left*2 + measure.Length(g.Across-1)*g.StepX + g.Width; g.Across > 0 && (w-g.Format.Width).Abs() > mm {
			t.Errorf("grid %q: margins and labels are %v wide on %v", g.Name, w, g.Format.Width)
		}
	}
}

func TestScaleTooLarge(t *testing.T) {
	set := setOf(t, "seam.yaml", []byte(twelveThirtySeven))
	set.Scale = 5
	if _, err := set.Book(sheet.HangingSheet); err == nil || !strings.Contains(err.Error(), "larger paper or a smaller scale") {
		t.Errorf("4 m at 1:5 on A4: %v", err)
	}
}

// Letters that no font holds are counted on the hanging plan and named by their code
// points, and who searches the file finds them: pdftotext is poppler's (Debian package
// poppler-utils).
func TestLackingLettersAreTold(t *testing.T) {
	p := samples[0].plan(t)
	p.Runs[0].Layout.Run.Walls[0].Name = "東の壁 🌷"
	s := sheet.Set{Job: "Ωmega кухня", Plan: p}
	if got, want := s.Lacking(), "東の壁🌷"; got != want {
		t.Errorf("%q is lacking, want %q", got, want)
	}
	d, err := s.Document(sheet.HangingSheet)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	file := filepath.Join(t.TempDir(), "sheets.pdf")
	if err := errors.Join(d.Write(&b), os.WriteFile(file, b.Bytes(), 0o600)); err != nil {
		t.Fatal(err)
	}
	found := strings.Join(strings.Fields(oracle.Run(t, "pdftotext", "-raw", file, "-")), " ")
	for _, want := range []string{"4 letters of the names stand as boxes", "U+6771, U+306E, U+58C1, U+1F337", "東の壁 🌷", "Ωmega кухня"} {
		if !strings.Contains(found, want) {
			t.Errorf("pdftotext finds no %q", want)
		}
	}
}
