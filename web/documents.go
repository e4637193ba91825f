package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/examples"
	"firstdrop/job"
	"firstdrop/job/yaml"
)

// Imported is a job that was read from a file.
type Imported struct {
	Body struct {
		Name     string   `json:"name"`
		Document Document `json:"document"`
	}
}

// ExampleBody tells of a sample job.
type ExampleBody struct {
	Name  string `json:"name" doc:"What it is asked for by."`
	Title string `json:"title" doc:"The job's name."`
	Note  string `json:"note,omitempty"`
}

// ExamplesOutput lists sample jobs.
type ExamplesOutput struct {
	Body struct {
		Examples []ExampleBody `json:"examples" doc:"All of them are invented."`
	}
}

// NamedExample names a sample job.
type NamedExample struct {
	Name string `path:"name"`
}

func (s *Server) documentOperations(api operations) {
	tags := []string{"documents"}
	add(api, huma.Operation{
		OperationID: "import-job", Method: http.MethodPost, Path: "/api/import", Summary: "Read a job from a file in YAML or JSON", Tags: tags,
		Description: "The answer holds the document; keep it with save-job. A key that the format does not have is refused, with its line and column. Of YAML, comments are not carried over.",
		RequestBody: aJob(), Errors: planErrors,
	}, s.importJob)
	for _, notation := range []struct {
		name, mediaType string
		write           func(b *bytes.Buffer, document []byte) error
	}{{"job.yaml", typeYAML, writeYAML}, {"job.json", typeJSON, writeJSON}} {
		add(api, huma.Operation{
			OperationID: "export-" + notation.name[4:], Method: http.MethodGet, Path: "/api/jobs/{id}/" + notation.name, Summary: "Save a job as a file", Tags: tags,
			Responses: answers(notation.mediaType), Errors: planErrors,
		}, func(ctx context.Context, in *StoredJob) (*Bytes, error) {
			document, err := in.document(ctx, s)
			if err != nil {
				return nil, err
			}
			return do(ctx, s.line, func(context.Context) (*Bytes, error) {
				var b bytes.Buffer
				err := notation.write(&b, document)
				return file(notation.mediaType, notation.name, &b), err
			})
		})
	}
	add(api, huma.Operation{OperationID: "get-schema", Method: http.MethodGet, Path: "/api/schema", Summary: "Get the JSON Schema of a job's document", Tags: tags, Responses: answers("application/schema+json")},
		func(context.Context, *struct{}) (*Bytes, error) {
			return &Bytes{ContentType: "application/schema+json", Policy: inertPolicy, Caching: "no-cache", Body: job.Schema()}, nil
		})
	add(api, huma.Operation{OperationID: "list-examples", Method: http.MethodGet, Path: "/api/examples", Summary: "List sample jobs", Tags: tags},
		func(context.Context, *struct{}) (*ExamplesOutput, error) { return listExamples() })
	add(api, huma.Operation{OperationID: "get-example", Method: http.MethodGet, Path: "/api/examples/{name}", Summary: "Get a sample job", Tags: tags, Errors: []int{404}},
		func(_ context.Context, in *NamedExample) (*Imported, error) {
			text, ok := examples.Named(in.Name)
			if !ok {
				return nil, newProblem(http.StatusNotFound, "not_found", fmt.Sprintf("there is no example %q; /api/examples lists them", in.Name))
			}
			return imported(text)
		})
}

func (s *Server) importJob(ctx context.Context, in *PostedJob) (*Imported, error) {
	text := bytes.Clone(in.RawBody)
	return do(ctx, s.line, func(context.Context) (*Imported, error) { return imported(text) })
}

// imported reads a job. A document in JSON stays as it is, byte for byte.
func imported(text []byte) (*Imported, error) {
	j, err := yaml.Read(fileName, text)
	if err != nil {
		return nil, err
	}
	out := &Imported{}
	out.Body.Name, out.Body.Document = j.Name, text
	if trimmed := bytes.TrimPrefix(text, []byte("\ufeff")); json.Valid(trimmed) {
		out.Body.Document = trimmed
		return out, nil
	}
	var b bytes.Buffer
	err = j.WriteJSON(&b)
	out.Body.Document = b.Bytes()
	return out, err
}

func writeYAML(b *bytes.Buffer, document []byte) error {
	j, err := yaml.Read(fileName, document)
	if err != nil {
		return err
	}
	return yaml.Write(b, j)
}

// writeJSON lays out a document, sound or not; no byte of what it says is changed.
func writeJSON(b *bytes.Buffer, document []byte) error { return json.Indent(b, document, "", "  ") }

func listExamples() (*ExamplesOutput, error) {
	out := &ExamplesOutput{}
	for _, name := range examples.Names() {
		text, _ := examples.Named(name)
		j, err := yaml.Read(name, text)
		if err != nil {
			return nil, fmt.Errorf("example %s: %w", name, err)
		}
		out.Body.Examples = append(out.Body.Examples, ExampleBody{name, j.Name, j.Note})
	}
	return out, nil
}
