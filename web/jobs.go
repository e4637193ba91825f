package web

import (
	"context"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/store"
)

// SummaryBody tells of a job without its document.
type SummaryBody struct {
	ID      string     `json:"id"`
	Name    string     `json:"name" doc:"As the document says."`
	Version int64      `json:"version" doc:"Counts every save; the number in the ETag."`
	Label   string     `json:"label" doc:"What the last save changed."`
	Size    int        `json:"size" doc:"Of the document in bytes."`
	Begun   time.Time  `json:"begun"`
	Saved   time.Time  `json:"saved"`
	Binned  *time.Time `json:"binned,omitempty" doc:"When it was thrown away."`
}

// JobBody is a job at one of its versions.
type JobBody struct {
	SummaryBody
	Document Document `json:"document"`
}

// RevisionBody is one change of a job.
type RevisionBody struct {
	Key      string     `json:"key,omitempty" doc:"A UUID chosen by whoever makes the revision: it then counts once, however often it is sent."`
	Document Document   `json:"document"`
	Label    string     `json:"label,omitempty" doc:"What was changed, on one line: window moved."`
	Made     *time.Time `json:"made,omitempty" doc:"When, by the clock of whoever made it."`
}

func summaryOf(s store.Summary) SummaryBody {
	b := SummaryBody{ID: string(s.ID), Name: s.Name, Version: s.Version, Label: s.Label, Size: s.Size, Begun: s.Begun, Saved: s.Saved}
	if !s.Binned.IsZero() {
		b.Binned = &s.Binned
	}
	return b
}

func bodyOf(j *store.Job) *JobBody {
	return &JobBody{summaryOf(j.Summary), Document(j.Document)}
}

func (r *RevisionBody) revision() store.Revision {
	out := store.Revision{Key: store.ID(r.Key), Document: r.Document, Label: r.Label}
	if r.Made != nil {
		out.Made = *r.Made
	}
	return out
}

// StoredJob names a job that the server keeps.
type StoredJob struct {
	ID string `path:"id" doc:"The job's id: a UUID in small letters, made by whoever begins the job."`
}

// Match says which version a change was made on.
type Match struct {
	IfMatch string `header:"If-Match" doc:"The ETag of the version that the change was made on."`
}

// Saved is the answer to a save.
type Saved struct {
	Status int
	ETag   string `header:"ETag"`
	Body   SummaryBody
}

func saved(s store.Summary, err error) (*Saved, error) {
	if err != nil {
		return nil, err
	}
	return &Saved{http.StatusOK, etag(s.Version), summaryOf(s)}, nil
}

// Stood is the answer to the question for a job.
type Stood struct {
	ETag string `header:"ETag"`
	Body JobBody
}

func stood(j *store.Job, err error) (*Stood, error) {
	if err != nil {
		return nil, err
	}
	return &Stood{etag(j.Version), *bodyOf(j)}, nil
}

// Listed is a list of jobs.
type Listed struct {
	Body struct {
		Jobs []SummaryBody `json:"jobs"`
	}
}

func listed(all []store.Summary, err error) (*Listed, error) {
	out := &Listed{}
	out.Body.Jobs = []SummaryBody{}
	for _, s := range all {
		out.Body.Jobs = append(out.Body.Jobs, summaryOf(s))
	}
	return out, err
}

// BinListed is what is in the bin, and what is erased.
type BinListed struct {
	Body struct {
		Jobs   []SummaryBody `json:"jobs"`
		Erased []store.ID    `json:"erased" doc:"The ids of jobs that were here and are removed for good: a device that still holds one can tell it from a job never heard of."`
	}
}

// binned lists the bin.
func (s *Server) binned(ctx context.Context) (*BinListed, error) {
	jobs, err := listed(s.Store.Bin(ctx))
	if err != nil {
		return nil, err
	}
	out := &BinListed{}
	out.Body.Jobs = jobs.Body.Jobs
	out.Body.Erased, err = s.Store.Erased(ctx)
	return out, err
}

func etag(version int64) string { return strconv.Quote(strconv.FormatInt(version, 10)) }

// base returns the version that a change was made on.
func (m *Match) base() (int64, error) {
	if m.IfMatch == "" {
		return 0, newProblem(http.StatusPreconditionRequired, "no_version",
			`say which version the change was made on, with If-Match: "3", so that nobody's work is overwritten`)
	}
	text, ok := strings.CutPrefix(m.IfMatch, `"`)
	text, isClosed := strings.CutSuffix(text, `"`)
	v, err := strconv.ParseInt(text, 10, 64)
	if !ok || !isClosed || err != nil || v < 1 || etag(v) != m.IfMatch {
		return 0, newProblem(http.StatusPreconditionFailed, "no_version", fmt.Sprintf(`If-Match is one ETag of a job, such as "3", and not %s`, m.IfMatch))
	}
	return v, nil
}

// Nothing is the answer when there is nothing to tell.
type Nothing struct{}

// jobErrors are those of operations on one job.
var jobErrors = []int{http.StatusNotFound, http.StatusPreconditionFailed, http.StatusRequestEntityTooLarge, http.StatusPreconditionRequired, http.StatusInsufficientStorage}

func (s *Server) jobOperations(api operations) {
	add(api, huma.Operation{OperationID: "list-jobs", Method: http.MethodGet, Path: "/api/jobs", Summary: "List all jobs, the last changed first", Tags: []string{"jobs"}},
		func(ctx context.Context, _ *struct{}) (*Listed, error) { return listed(s.Store.List(ctx)) })
	add(api, huma.Operation{OperationID: "get-job", Method: http.MethodGet, Path: "/api/jobs/{id}", Summary: "Get a job as it stands", Tags: []string{"jobs"}, Errors: []int{404}},
		func(ctx context.Context, in *StoredJob) (*Stood, error) {
			return stood(s.Store.Get(ctx, store.ID(in.ID)))
		})
	add(api, huma.Operation{
		OperationID: "save-job", Method: http.MethodPut, Path: "/api/jobs/{id}", Summary: "Save a job, or begin one", Tags: []string{"jobs"}, Errors: jobErrors,
		Description: "With If-Match: the version that the change was made on. With If-None-Match: *: the job is new. When the job is at another version, nothing is saved, and the answer (412) holds the job as it stands.",
	}, s.saveJob)
	alsoCreates(api, "/api/jobs/{id}", http.MethodPut)
	add(api, huma.Operation{
		OperationID: "push-revisions", Method: http.MethodPost, Path: "/api/jobs/{id}/revisions", Summary: "Save several revisions at once", Tags: []string{"jobs"}, Errors: jobErrors, MaxBodyBytes: mostPush,
		Description: "What a device did while it was away, all or none. Revisions with a key that are there already, right behind the base, count once: a push whose answer was lost can be sent again.",
	}, s.pushRevisions)
	alsoCreates(api, "/api/jobs/{id}/revisions", http.MethodPost)
	add(api, huma.Operation{OperationID: "rename-job", Method: http.MethodPost, Path: "/api/jobs/{id}/name", Summary: "Give a job another name", Tags: []string{"jobs"}, Errors: jobErrors}, s.renameJob)
	add(api, huma.Operation{OperationID: "discard-job", Method: http.MethodDelete, Path: "/api/jobs/{id}", Summary: "Move a job into the bin", Tags: []string{"bin"}, DefaultStatus: 204, Errors: []int{404}},
		func(ctx context.Context, in *StoredJob) (*Nothing, error) {
			return nil, s.Store.Discard(ctx, store.ID(in.ID))
		})
	add(api, huma.Operation{OperationID: "list-bin", Method: http.MethodGet, Path: "/api/bin", Summary: "List what is in the bin, and what is erased", Tags: []string{"bin"}},
		func(ctx context.Context, _ *struct{}) (*BinListed, error) { return s.binned(ctx) })
	add(api, huma.Operation{OperationID: "recover-job", Method: http.MethodPost, Path: "/api/bin/{id}/recover", Summary: "Take a job out of the bin", Tags: []string{"bin"}, DefaultStatus: 204, Errors: []int{404}},
		func(ctx context.Context, in *StoredJob) (*Nothing, error) {
			return nil, s.Store.Recover(ctx, store.ID(in.ID))
		})
	add(api, huma.Operation{OperationID: "erase-job", Method: http.MethodDelete, Path: "/api/bin/{id}", Summary: "Remove a job in the bin for good, with its history and pictures", Tags: []string{"bin"}, DefaultStatus: 204, Errors: []int{404}},
		func(ctx context.Context, in *StoredJob) (*Nothing, error) {
			return nil, s.Store.Erase(ctx, store.ID(in.ID))
		})
}

// SaveInput is a save.
type SaveInput struct {
	StoredJob
	Match
	IfNoneMatch string `header:"If-None-Match" doc:"* says that the job is new."`
	Body        RevisionBody
}

func (s *Server) saveJob(ctx context.Context, in *SaveInput) (*Saved, error) {
	var base int64
	if in.IfNoneMatch != "*" || in.IfMatch != "" {
		var err error
		if base, err = in.base(); err != nil {
			return nil, err
		}
	}
	return s.push(ctx, in.ID, base, in.Body)
}

// PushInput is a push of several revisions.
type PushInput struct {
	StoredJob
	Body struct {
		Base      int64          `json:"base" minimum:"0" doc:"The version that the first revision was made on; 0: the job is new."`
		Revisions []RevisionBody `json:"revisions" minItems:"1" doc:"In the order in which they were made."`
	}
}

func (s *Server) pushRevisions(ctx context.Context, in *PushInput) (*Saved, error) {
	return s.push(ctx, in.ID, in.Body.Base, in.Body.Revisions...)
}

func (s *Server) push(ctx context.Context, id string, base int64, bodies ...RevisionBody) (*Saved, error) {
	revisions := make([]store.Revision, len(bodies))
	for i := range bodies {
		revisions[i] = bodies[i].revision()
	}
	out, err := saved(s.Store.Push(ctx, store.ID(id), base, revisions))
	if err == nil && base == 0 {
		out.Status = http.StatusCreated
	}
	return out, err
}

// RenameInput is another name for a job.
type RenameInput struct {
	StoredJob
	Match
	Body struct {
		Name  string `json:"name"`
		Label string `json:"label,omitempty" doc:"What is said of it in the history."`
	}
}

func (s *Server) renameJob(ctx context.Context, in *RenameInput) (*Saved, error) {
	base, err := in.base()
	if err != nil {
		return nil, err
	}
	return saved(store.Rename(ctx, s.Store, store.ID(in.ID), base, in.Body.Name, in.Body.Label))
}
