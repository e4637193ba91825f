package web

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	_ "image/gif" // its size is looked at before it is read
	"image/jpeg"
	"image/png"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/picture"
	"firstdrop/paper"
	"firstdrop/store"
)

// PictureBody tells of a picture.
type PictureBody struct {
	Name   string `json:"name" doc:"What the job's document calls it as the picture of a paper."`
	Type   string `json:"type" doc:"Its media type."`
	Width  int    `json:"width" doc:"In squares."`
	Height int    `json:"height"`
	Size   int    `json:"size" doc:"In bytes."`
}

func pictureBody(p store.Picture) PictureBody {
	return PictureBody{p.Name, p.Type, p.Width, p.Height, p.Size}
}

// AddPictureInput is a picture as it comes.
type AddPictureInput struct {
	StoredJob
	RawBody []byte
}

// AddedPicture tells of a picture that is kept.
type AddedPicture struct{ Body PictureBody }

// StoredPicture names a picture of a job.
type StoredPicture struct {
	StoredJob
	Name string `path:"name"`
}

// PicturesOutput lists pictures.
type PicturesOutput struct {
	Body struct {
		Pictures []PictureBody `json:"pictures" doc:"The oldest first."`
	}
}

func (s *Server) pictureOperations(api operations) {
	tags := []string{"pictures"}
	add(api, huma.Operation{
		OperationID: "add-picture", Method: http.MethodPost, Path: "/api/jobs/{id}/pictures", Summary: "Keep a picture of a paper", Tags: tags,
		Description: fmt.Sprintf("PNG, JPEG, GIF, or an SVG drawing of a plain kind. It is read, and written anew without anything but what it shows; the name in the answer, the SHA-256 of the file with .png or .jpg, goes into the job's document. A job has at most %d.", store.MostPictures),
		RequestBody: takes("The file", "image/png", "image/jpeg", "image/gif", "image/svg+xml"), MaxBodyBytes: store.MostPicture,
		DefaultStatus: http.StatusCreated, Errors: append([]int{http.StatusServiceUnavailable}, jobErrors...),
	}, s.addPicture)
	add(api, huma.Operation{OperationID: "list-pictures", Method: http.MethodGet, Path: "/api/jobs/{id}/pictures", Summary: "List the pictures of a job", Tags: tags, Errors: []int{404}}, s.listPictures)
	add(api, huma.Operation{
		OperationID: "get-picture", Method: http.MethodGet, Path: "/api/jobs/{id}/pictures/{name}", Summary: "Get a picture", Tags: tags, Errors: []int{404},
		Responses: answers("image/png", "image/jpeg"),
	}, s.getPicture)
}

func (s *Server) addPicture(ctx context.Context, in *AddPictureInput) (*AddedPicture, error) {
	data := bytes.Clone(in.RawBody)
	p, err := do(ctx, s.line, func(context.Context) (*store.Picture, error) { return readPicture(data) })
	if err != nil {
		return nil, err
	}
	if err := s.Store.AddPicture(ctx, store.ID(in.ID), *p); err != nil {
		return nil, err
	}
	return &AddedPicture{pictureBody(*p)}, nil
}

// mostSquares is how large a picture may be: enough for one width of paper at a
// quarter of a millimetre, and little enough that several fit into memory.
const mostSquares = 16_000_000

// readPicture reads what a file shows, and writes it anew. The name is the hash of the
// file as it came, so that who sends it can name it before a server has seen it.
func readPicture(data []byte) (*store.Picture, error) {
	if c, _, err := image.DecodeConfig(bytes.NewReader(data)); err == nil && int64(c.Width)*int64(c.Height) > mostSquares {
		return nil, newProblem(http.StatusUnprocessableEntity, "no_picture",
			fmt.Sprintf("the picture is %d × %d squares, more than %d together: save it smaller", c.Width, c.Height, mostSquares))
	}
	shown, err := picture.Decode(data)
	if err != nil {
		return nil, newProblem(http.StatusUnprocessableEntity, "no_picture", err.Error())
	}
	p := &store.Picture{Type: "image/png", Width: shown.Width, Height: shown.Height}
	ending := "png"
	var b bytes.Buffer
	if shown.Photo {
		p.Type, ending = "image/jpeg", "jpg"
		err = jpeg.Encode(&b, shown.Image(), &jpeg.Options{Quality: 92})
	} else {
		err = png.Encode(&b, shown.Image())
	}
	sum := sha256.Sum256(data)
	p.Bytes, p.Size = b.Bytes(), b.Len()
	p.Name = hex.EncodeToString(sum[:]) + "." + ending
	return p, err
}

func (s *Server) listPictures(ctx context.Context, in *StoredJob) (*PicturesOutput, error) {
	all, err := s.Store.Pictures(ctx, store.ID(in.ID))
	out := &PicturesOutput{}
	out.Body.Pictures = []PictureBody{}
	for _, p := range all {
		out.Body.Pictures = append(out.Body.Pictures, pictureBody(p))
	}
	return out, err
}

func (s *Server) getPicture(ctx context.Context, in *StoredPicture) (*Bytes, error) {
	p, err := s.Store.Picture(ctx, store.ID(in.ID), in.Name)
	if err != nil {
		return nil, err
	}
	return &Bytes{ContentType: p.Type, Policy: inertPolicy, Caching: "private, max-age=31536000, immutable", Body: p.Bytes}, nil
}

// designSharp is how many squares a demo design is across: sharp at 1:10.
const designSharp = 480

// repeats returns the pictures of the papers of a plan; nil for one without. kept
// returns a picture that belongs to the job.
func (p *planned) repeats(kept func(name string) (*store.Picture, error)) ([]*draw.Picture, error) {
	all := make([]*draw.Picture, len(p.plan.Task.Papers))
	for i := range all {
		name := p.job.Papers[i].Picture
		if name == "" {
			continue
		}
		var err error
		if all[i], err = repeatOf(name, &p.plan.Task.Papers[i], kept); err != nil {
			return nil, noPicture(i, name, err)
		}
	}
	return all, nil
}

func repeatOf(name string, label *paper.Paper, kept func(name string) (*store.Picture, error)) (*draw.Picture, error) {
	if d, ok := design.Named(name); ok {
		repeat := label.Repeat
		if repeat <= 0 {
			repeat = d.Repeat.Scaled(int64(label.Width), int64(d.Width))
		}
		return d.Picture(label.Width, repeat, designSharp)
	}
	p, err := kept(name)
	if err != nil {
		return nil, err
	}
	return picture.Decode(p.Bytes)
}

func noPicture(paper int, name string, err error) error {
	if store.CodeOf(err) != store.NotFound {
		return err
	}
	p := newProblem(http.StatusUnprocessableEntity, "no_picture", "a picture is not there")
	p.Errors = []Fault{{Path: fmt.Sprintf("papers[%d].picture", paper), Message: fmt.Sprintf("there is no picture %q with the job; add it, or name one of the demo designs tulips, quince, ginkgo", name)}}
	return p
}
