package web

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"
)

// HealthOutput says that the server can do its work.
type HealthOutput struct {
	Body struct {
		Status  string `json:"status" enum:"ok"`
		Version string `json:"version" doc:"Of the program."`
	}
}

func (s *Server) healthOperations(api operations) {
	add(api, huma.Operation{OperationID: "get-health", Method: http.MethodGet, Path: "/healthz", Summary: "Say whether the server can do its work", Tags: []string{"server"}, Errors: []int{503}},
		func(ctx context.Context, _ *struct{}) (*HealthOutput, error) {
			if err := s.Store.Ping(ctx); err != nil {
				s.Log.Error("the store cannot be read", "error", err.Error())
				return nil, newProblem(http.StatusServiceUnavailable, "no_store", "the jobs cannot be read; the server's log says why")
			}
			out := &HealthOutput{}
			out.Body.Status, out.Body.Version = "ok", s.Version
			return out, nil
		})
}
