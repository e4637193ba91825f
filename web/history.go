package web

import (
	"context"
	"net/http"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/store"
)

// VersionBody tells of one version of a job.
type VersionBody struct {
	Version int64     `json:"version"`
	Job     string    `json:"job" doc:"The job's name at that time."`
	Label   string    `json:"label" doc:"What the save changed."`
	Name    string    `json:"name,omitempty" doc:"Given by the user."`
	Made    time.Time `json:"made" doc:"By the clock of whoever made the change."`
	Saved   time.Time `json:"saved" doc:"By the server's clock."`
	Size    int       `json:"size"`
}

// StoredVersion names a version of a job.
type StoredVersion struct {
	StoredJob
	Version int64 `path:"version" minimum:"1"`
}

// HistoryInput asks for a part of a history.
type HistoryInput struct {
	StoredJob
	Below int64 `query:"below" minimum:"1" doc:"Only versions below this one."`
	Most  int   `query:"most" minimum:"1" maximum:"1000" default:"200" doc:"At most so many."`
}

// HistoryOutput is a part of a history.
type HistoryOutput struct {
	Body struct {
		Versions []VersionBody `json:"versions" doc:"The newest first."`
	}
}

func (s *Server) historyOperations(api operations) {
	tags := []string{"history"}
	add(api, huma.Operation{OperationID: "get-history", Method: http.MethodGet, Path: "/api/jobs/{id}/history", Summary: "List the versions of a job, the newest first", Tags: tags, Errors: []int{404}}, s.history)
	add(api, huma.Operation{OperationID: "get-version", Method: http.MethodGet, Path: "/api/jobs/{id}/history/{version}", Summary: "Get a job as it stood", Tags: tags, Errors: []int{404}},
		func(ctx context.Context, in *StoredVersion) (*Stood, error) {
			return stood(s.Store.Version(ctx, store.ID(in.ID), in.Version))
		})
	add(api, huma.Operation{OperationID: "name-version", Method: http.MethodPut, Path: "/api/jobs/{id}/history/{version}/name", Summary: "Give a version a name, or take it away", Tags: tags, DefaultStatus: 204, Errors: []int{404}},
		func(ctx context.Context, in *NameInput) (*Nothing, error) {
			return nil, s.Store.NameVersion(ctx, store.ID(in.ID), in.Version, in.Body.Name)
		})
	add(api, huma.Operation{OperationID: "restore-version", Method: http.MethodPost, Path: "/api/jobs/{id}/history/{version}/restore", Summary: "Make an earlier version the next one", Tags: tags, Errors: jobErrors}, s.restoreVersion)
}

func (s *Server) history(ctx context.Context, in *HistoryInput) (*HistoryOutput, error) {
	below := in.Below
	if below == 0 {
		below = -1
	}
	vs, err := s.Store.History(ctx, store.ID(in.ID), below, in.Most)
	out := &HistoryOutput{}
	out.Body.Versions = []VersionBody{}
	for _, v := range vs {
		out.Body.Versions = append(out.Body.Versions, VersionBody(v))
	}
	return out, err
}

// NameInput is a name for a version.
type NameInput struct {
	StoredVersion
	Body struct {
		Name string `json:"name" doc:"Empty: none."`
	}
}

// RestoreInput asks for an earlier version.
type RestoreInput struct {
	StoredVersion
	Match
	Body struct {
		Label string `json:"label,omitempty" doc:"What is said of it in the history."`
	}
}

func (s *Server) restoreVersion(ctx context.Context, in *RestoreInput) (*Saved, error) {
	base, err := in.base()
	if err != nil {
		return nil, err
	}
	return saved(store.Restore(ctx, s.Store, store.ID(in.ID), base, in.Version, in.Body.Label))
}
