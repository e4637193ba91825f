package web

import (
	"context"
	"encoding/json"
	"maps"
	"net/http"
	"reflect"
	"slices"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"

	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/store"
)

// Limits of what is read.
const (
	mostBody = store.MostBytes + 64<<10 // of a request with one document
	mostPush = 32 << 20                 // of one with several
)

// api adds the operations under /api.
func (s *Server) api(mux *http.ServeMux) {
	r := huma.NewMapRegistry("#/components/schemas/", huma.DefaultSchemaNamer)
	for t, alias := range map[reflect.Type]reflect.Type{
		reflect.TypeFor[measure.Length]():   reflect.TypeFor[float64](),
		reflect.TypeFor[json.Number]():      reflect.TypeFor[float64](),
		reflect.TypeFor[finding.Severity](): reflect.TypeFor[string](),
		reflect.TypeFor[hanging.SeamKind](): reflect.TypeFor[string](),
		reflect.TypeFor[hanging.Side]():     reflect.TypeFor[string](),
		reflect.TypeFor[hanging.SetTo]():    reflect.TypeFor[string](),
		reflect.TypeFor[hanging.Meets]():    reflect.TypeFor[string](),
	} {
		r.RegisterTypeAlias(t, alias)
	}
	config := huma.Config{
		OpenAPI: &huma.OpenAPI{
			OpenAPI: "3.1.0",
			Info: &huma.Info{
				Title: "Firstdrop", Version: "1",
				Description: "Jobs of hanging wallpaper with their history, plans, checks, sheets and lists. Lengths in plans are numbers of millimetres.",
			},
			Components: &huma.Components{Schemas: r},
		},
		// No page of documentation: it would take its scripts from elsewhere.
		OpenAPIPath: "/api/openapi", Formats: huma.DefaultFormats, DefaultFormat: "application/json",
		RejectUnknownQueryParameters: true,
	}
	api := operations{huma.NewAPI(config, humago.NewAdapter(mux, "")), s}
	s.jobOperations(api)
	s.historyOperations(api)
	s.pictureOperations(api)
	s.tickOperations(api)
	s.planOperations(api)
	s.sheetOperations(api)
	s.documentOperations(api)
	s.healthOperations(api)
}

// operations takes operations into the API.
type operations struct {
	huma.API
	server *Server
}

// everywhere are the errors that any operation may answer with.
var everywhere = []int{http.StatusBadRequest, http.StatusUnauthorized, http.StatusForbidden, http.StatusMisdirectedRequest, http.StatusUnprocessableEntity, http.StatusInternalServerError}

// add takes in one operation. Errors of its handler are told as problems.
func add[I, O any](api operations, op huma.Operation, handler func(context.Context, *I) (*O, error)) {
	op.Errors = append(slices.Clone(op.Errors), everywhere...)
	if op.Method == http.MethodPut || op.Method == http.MethodPost {
		op.Errors = append(op.Errors, http.StatusRequestEntityTooLarge, http.StatusUnsupportedMediaType, http.StatusRequestTimeout)
	}
	// What is sent as a file is looked at by the handler itself.
	_, isFile := reflect.TypeFor[I]().FieldByName("RawBody")
	op.SkipValidateBody = isFile
	slices.Sort(op.Errors)
	op.Errors = slices.Compact(op.Errors)
	op.BodyReadTimeout = readTime
	if op.MaxBodyBytes == 0 {
		op.MaxBodyBytes = mostBody
	}
	if op.DefaultStatus == 0 {
		op.DefaultStatus = http.StatusOK
	}
	huma.Register(api.API, op, func(ctx context.Context, in *I) (*O, error) {
		out, err := handler(ctx, in)
		return out, api.server.asProblem(err)
	})
}

// alsoCreates says that an operation answers 201 where it has made something new.
func alsoCreates(api operations, path, method string) {
	item := api.OpenAPI().Paths[path]
	op := map[string]*huma.Operation{http.MethodPut: item.Put, http.MethodPost: item.Post}[method]
	created := *op.Responses["200"]
	created.Description = http.StatusText(http.StatusCreated)
	op.Responses["201"] = &created
}

// Document is a job's document: any JSON object, sound or not.
type Document json.RawMessage

// MarshalJSON returns the document.
func (d Document) MarshalJSON() ([]byte, error) { return d, nil }

// UnmarshalJSON takes the document as it stands.
func (d *Document) UnmarshalJSON(data []byte) error {
	*d = slices.Clone(data)
	return nil
}

// Schema describes it: what a sound job holds, /api/schema tells.
func (Document) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Type: huma.TypeObject, AdditionalProperties: true, Description: "A job's document. /api/schema describes a sound one; one that is not finished can be kept too."}
}

// Bytes is an answer that is a file.
type Bytes struct {
	ContentType string `header:"Content-Type"`
	Disposition string `header:"Content-Disposition"`
	Policy      string `header:"Content-Security-Policy"`
	Caching     string `header:"Cache-Control"`
	Body        []byte
}

// answers describes an answer that is a file of one of some kinds.
func answers(types ...string) map[string]*huma.Response {
	content := map[string]*huma.MediaType{}
	for _, t := range types {
		content[t] = &huma.MediaType{Schema: &huma.Schema{Type: huma.TypeString, Format: "binary"}}
	}
	return map[string]*huma.Response{"200": {Description: "OK", Content: content}}
}

// takes describes a request that is a text of one of some kinds.
func takes(what string, types ...string) *huma.RequestBody {
	content := map[string]*huma.MediaType{}
	for _, t := range types {
		content[t] = &huma.MediaType{Schema: &huma.Schema{Type: huma.TypeString, Format: "binary"}}
	}
	return &huma.RequestBody{Description: what, Required: true, Content: maps.Clone(content)}
}
