package web

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"mime"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/draw"
	"firstdrop/draw/dxf"
	"firstdrop/draw/svg"
	"firstdrop/sheet"
	"firstdrop/store"
)

// SheetQuery says which sheets are wanted, and how.
type SheetQuery struct {
	Words
	Sheets    []string `query:"sheets" enum:"survey,order,hanging,cutting,rolls,labels,steps,record" doc:"All, if not given."`
	PaperSize string   `query:"paper_size" enum:"A4,A3,letter,tabloid" doc:"That of the language, if not given."`
	Scale     int64    `query:"scale" minimum:"1" maximum:"10000" doc:"n for elevations at 1:n; the largest that fits, if not given."`
	Labels    string   `query:"labels" enum:"plain,3x8,3x7,3x10" doc:"The grid of labels on a sheet."`
}

// WallQuery says which wall is drawn.
type WallQuery struct {
	Words
	Run  int `query:"run" minimum:"0" doc:"Which of the plan's runs, from 0."`
	Wall int `query:"wall" minimum:"0" doc:"Which of its walls, from 0."`
}

// ListQuery says of which paper a list is.
type ListQuery struct {
	Words
	Paper int    `query:"paper" minimum:"0" doc:"Which of the plan's papers, from 0."`
	Order string `query:"order" enum:"hung,cut" doc:"In the order of hanging, if not given, or roll by roll."`
}

// Each is asked of a job that is kept, and of one that is sent along.
type (
	storedSheets struct {
		StoredJob
		SheetQuery
	}
	postedSheets struct {
		PostedJob
		SheetQuery
	}
	storedWall struct {
		StoredJob
		WallQuery
	}
	postedWall struct {
		PostedJob
		WallQuery
	}
	storedList struct {
		StoredJob
		ListQuery
	}
	postedList struct {
		PostedJob
		ListQuery
	}
)

// The media types of what is made.
const (
	typePDF  = "application/pdf"
	typeSVG  = "image/svg+xml"
	typeDXF  = "image/vnd.dxf"
	typeXLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
	typeCSV  = "text/csv; charset=utf-8"
	typeYAML = "application/yaml"
	typeJSON = "application/json"
)

func (s *Server) sheetOperations(api operations) {
	op := func(name, path, summary, mediaType string) huma.Operation {
		return huma.Operation{OperationID: name, Path: path, Summary: summary, Tags: []string{"sheets"}, Responses: answers(mediaType)}
	}
	forBoth(api, op("sheets", "sheets.pdf", "Print the sheets for the wall", typePDF),
		func(ctx context.Context, in *storedSheets) (*Bytes, error) { return s.sheets(ctx, in, &in.SheetQuery) },
		func(ctx context.Context, in *postedSheets) (*Bytes, error) { return s.sheets(ctx, in, &in.SheetQuery) })
	forBoth(api, op("wall-svg", "wall.svg", "Draw a wall", typeSVG),
		func(ctx context.Context, in *storedWall) (*Bytes, error) {
			return s.wall(ctx, in, &in.WallQuery, typeSVG)
		},
		func(ctx context.Context, in *postedWall) (*Bytes, error) {
			return s.wall(ctx, in, &in.WallQuery, typeSVG)
		})
	forBoth(api, op("wall-dxf", "wall.dxf", "Draw a wall for drafting programs", typeDXF),
		func(ctx context.Context, in *storedWall) (*Bytes, error) {
			return s.wall(ctx, in, &in.WallQuery, typeDXF)
		},
		func(ctx context.Context, in *postedWall) (*Bytes, error) {
			return s.wall(ctx, in, &in.WallQuery, typeDXF)
		})
	forBoth(api, op("lists", "lists.xlsx", "Write all lists as a workbook", typeXLSX),
		func(ctx context.Context, in *storedWords) (*Bytes, error) { return s.workbook(ctx, in, in.Words) },
		func(ctx context.Context, in *postedWords) (*Bytes, error) { return s.workbook(ctx, in, in.Words) })
	forBoth(api, op("cutting-list", "cutting-list.csv", "Write the cutting list of a paper", typeCSV),
		func(ctx context.Context, in *storedList) (*Bytes, error) {
			return s.list(ctx, in, &in.ListQuery, cuttingList)
		},
		func(ctx context.Context, in *postedList) (*Bytes, error) {
			return s.list(ctx, in, &in.ListQuery, cuttingList)
		})
	forBoth(api, op("roll-map", "roll-map.csv", "Write the map of the rolls of a paper", typeCSV),
		func(ctx context.Context, in *storedList) (*Bytes, error) {
			return s.list(ctx, in, &in.ListQuery, rollMap)
		},
		func(ctx context.Context, in *postedList) (*Bytes, error) {
			return s.list(ctx, in, &in.ListQuery, rollMap)
		})
}

// file is an answer to be saved under a name.
func file(mediaType, name string, b *bytes.Buffer) *Bytes {
	return &Bytes{
		ContentType: mediaType, Policy: inertPolicy, Caching: "no-store", Body: b.Bytes(),
		Disposition: mime.FormatMediaType("attachment", map[string]string{"filename": name}),
	}
}

// simulated is how many jobs the certainty curve of the order sheet stands on: a
// share shows to 3 in 100 at worst.
const simulated = 1000

func (s *Server) sheets(ctx context.Context, from source, q *SheetQuery) (*Bytes, error) {
	return makes(ctx, s, from, func(p *planned) (*Bytes, error) {
		repeats, err := p.repeats(func(name string) (*store.Picture, error) { return from.picture(ctx, s, name) })
		if err != nil {
			return nil, err
		}
		set := sheet.Set{
			Job: p.job.Name, Plan: p.plan, System: p.units(q.Units), Lang: p.words(q.Words), Repeats: repeats, Jobs: simulated, Scale: q.Scale,
		}
		set.Format, _ = draw.FormatNamed(q.PaperSize) // checked already; none: the usual one
		set.Labels, _ = sheet.GridNamed(q.Labels)
		d, err := set.Document(kindsOf(q.Sheets)...)
		var large *sheet.TooLargeError
		if errors.As(err, &large) {
			return nil, newProblem(http.StatusUnprocessableEntity, "no_room", err.Error())
		}
		if err != nil {
			return nil, err
		}
		var b bytes.Buffer
		if err := d.Write(&b); err != nil {
			return nil, err
		}
		return file(typePDF, "sheets.pdf", &b), nil
	})
}

// kindsOf returns the sheets of those names; all for none.
func kindsOf(names []string) (kinds []sheet.Kind) {
	if len(names) == 0 {
		return sheet.Kinds()
	}
	for _, n := range names {
		kinds = append(kinds, sheet.Kind(n))
	}
	return kinds
}

func (s *Server) wall(ctx context.Context, from source, q *WallQuery, mediaType string) (*Bytes, error) {
	return makes(ctx, s, from, func(p *planned) (*Bytes, error) {
		if q.Run >= len(p.plan.Runs) || q.Wall >= len(p.plan.Runs[q.Run].Layout.Run.Walls) {
			return nil, newProblem(http.StatusNotFound, "not_found", fmt.Sprintf("the plan has no wall %d of run %d", q.Wall, q.Run))
		}
		scene := sheet.Wall(p.plan, q.Run, q.Wall, sheet.Options{System: p.units(q.Units), Lang: p.words(q.Words)})
		write, ending := svg.Write, "svg"
		if mediaType == typeDXF {
			write, ending = dxf.Write, "dxf"
		}
		var b bytes.Buffer
		if err := write(&b, scene); err != nil {
			return nil, err
		}
		out := file(mediaType, "wall."+ending, &b)
		if mediaType == typeSVG {
			out.Disposition = "inline"
		}
		return out, nil
	})
}

func (s *Server) workbook(ctx context.Context, from source, w Words) (*Bytes, error) {
	return makes(ctx, s, from, func(p *planned) (*Bytes, error) {
		var b bytes.Buffer
		if err := sheet.Workbook(&b, p.plan, p.words(w)); err != nil {
			return nil, err
		}
		return file(typeXLSX, "lists.xlsx", &b), nil
	})
}

// lister writes a list of one paper.
type lister struct {
	name  string
	write func(b *bytes.Buffer, p *planned, q *ListQuery) error
}

var cuttingList = lister{"cutting-list.csv", func(b *bytes.Buffer, p *planned, q *ListQuery) error {
	by := sheet.AsHung
	if q.Order == "cut" {
		by = sheet.AsCut
	}
	return sheet.CuttingList(b, p.plan, q.Paper, by, p.words(q.Words))
}}

var rollMap = lister{"roll-map.csv", func(b *bytes.Buffer, p *planned, q *ListQuery) error {
	return sheet.RollMap(b, p.plan, q.Paper, p.words(q.Words))
}}

func (s *Server) list(ctx context.Context, from source, q *ListQuery, l lister) (*Bytes, error) {
	return makes(ctx, s, from, func(p *planned) (*Bytes, error) {
		if q.Paper >= len(p.plan.Papers) || p.plan.Papers[q.Paper].Batches == nil {
			return nil, newProblem(http.StatusNotFound, "not_found", fmt.Sprintf("the plan uses no paper %d", q.Paper))
		}
		var b bytes.Buffer
		if err := l.write(&b, p, q); err != nil {
			return nil, err
		}
		return file(typeCSV, l.name, &b), nil
	})
}
