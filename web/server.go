package web

import (
	"io/fs"
	"log/slog"
	"net/http"
	"runtime"
	"time"

	"firstdrop/plan"
	"firstdrop/store"
)

// Options say what a server is made from.
type Options struct {
	Store store.Store
	Files fs.FS // the built front end, index.html at its root
	Log   *slog.Logger
	// Version of the program, for whoever asks.
	Version string
	// Hosts are further names that the server is called by. It answers to those of
	// the machine itself, and to no others: a page elsewhere whose name leads here
	// must not read jobs.
	Hosts []string
	// Reachable says that others than this machine reach the server. It then answers
	// to addresses in digits, which cannot lead elsewhere, and asks for the Token.
	Reachable bool
	Token     string
	// Secure says that the server is reached by HTTPS.
	Secure bool
	// Plans is how many are worked out at once; 0: as many as there are processors.
	Plans int
	// PlanTime is how long somebody waits for a plan and what is made of it; 0: 45 s.
	PlanTime time.Duration
	// Make makes plans; [plan.Make] when nil.
	Make func(*plan.Task) (*plan.Plan, error)
}

// Limits of time.
const (
	readTime  = time.Minute      // until a request has come
	planTime  = 45 * time.Second // until a plan and what is made of it is there, if not given
	writeTime = 3 * time.Minute  // until an answer has gone
	idleTime  = 2 * time.Minute
)

// Server answers requests. It is an [http.Handler] and may be used by several at
// once.
type Server struct {
	Options
	line    *line
	plans   *plans
	handler http.Handler
}

// New returns a server.
func New(o Options) *Server {
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Make == nil {
		o.Make = plan.Make
	}
	if o.Plans <= 0 {
		o.Plans = runtime.GOMAXPROCS(0)
	}
	if o.PlanTime <= 0 {
		o.PlanTime = planTime
	}
	s := &Server{Options: o, line: newLine(o.Plans, o.PlanTime), plans: newPlans()}
	mux := http.NewServeMux()
	s.api(mux)
	mux.HandleFunc("GET /api/enter", s.enter)
	mux.HandleFunc("/api/", func(w http.ResponseWriter, r *http.Request) {
		refuse(w, http.StatusNotFound, "not_found", "there is no "+r.Method+" "+r.URL.Path+"; /api/openapi.json lists what there is")
	})
	mux.Handle("/", newFrontEnd(o.Files))
	s.handler = s.logged(withHeaders(s.guarded(mux)))
	return s
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// HTTP returns an HTTP server with the limits of time that belong to the handler.
func (s *Server) HTTP() *http.Server {
	return &http.Server{
		Handler: s, ReadTimeout: readTime, WriteTimeout: writeTime, IdleTimeout: idleTime, MaxHeaderBytes: 64 << 10,
		ErrorLog: slog.NewLogLogger(s.Log.Handler(), slog.LevelWarn),
	}
}
