package web

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/store"
)

// TickBody is a tick on one of a job's lists.
type TickBody struct {
	Key  string `json:"key" minLength:"1" maxLength:"1000" doc:"What it stands beside, as the device names it."`
	On   bool   `json:"on" doc:"False: it was taken away."`
	Turn int64  `json:"turn" minimum:"1" maximum:"9007199254740991" doc:"One more than the greatest turn of this tick that the device has seen; 1 for a new one. Of two words the greater turn counts, of two of one turn the one that sets it."`
}

// TicksBody is a list of ticks.
type TicksBody struct {
	Ticks []TickBody `json:"ticks" maxItems:"1000"`
}

// TickInput is what a device has ticked.
type TickInput struct {
	StoredJob
	Body TicksBody
}

// TicksOutput is all ticks of a job.
type TicksOutput struct {
	Body struct {
		Ticks []TickBody `json:"ticks"`
	}
}

func (s *Server) tickOperations(api operations) {
	add(api, huma.Operation{
		OperationID: "tick", Method: http.MethodPost, Path: "/api/jobs/{id}/ticks", Summary: "Set ticks on the lists of a job, or take them away, and get all", Tags: []string{"jobs"},
		Description:   "What is cut and what hangs is kept beside the job, since it changes no plan. Of each tick the word of the greatest turn counts, whatever the clocks of devices say, so there is no version to name; without any, all there are come back.",
		DefaultStatus: http.StatusOK, Errors: []int{http.StatusNotFound, http.StatusRequestEntityTooLarge, http.StatusInsufficientStorage},
	}, s.tick)
}

func (s *Server) tick(ctx context.Context, in *TickInput) (*TicksOutput, error) {
	ticks := make([]store.Tick, len(in.Body.Ticks))
	for i, t := range in.Body.Ticks {
		ticks[i] = store.Tick(t)
	}
	all, err := s.Store.Tick(ctx, store.ID(in.ID), ticks)
	if err != nil {
		return nil, err
	}
	out := &TicksOutput{}
	out.Body.Ticks = []TickBody{}
	for _, t := range all {
		out.Body.Ticks = append(out.Body.Ticks, TickBody(t))
	}
	return out, nil
}
