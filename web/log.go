package web

import (
	"fmt"
	"log/slog"
	"net/http"
	"runtime/debug"
	"time"
)

// logged tells of every request, without its query: that may hold a token. A
// panic, which is a fault of the program, becomes an answer.
func (s *Server) logged(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun := time.Now()
		seen := &seenWriter{ResponseWriter: w}
		defer func() {
			if fault := recover(); fault != nil {
				if fault == http.ErrAbortHandler {
					panic(fault)
				}
				s.Log.Error("fault", "what", fmt.Sprint(fault), "stack", string(debug.Stack()))
				if seen.status == 0 {
					refuse(seen, http.StatusInternalServerError, "internal", "this is a fault of the program; please report it")
				}
			}
			level := slog.LevelInfo
			if seen.status >= 500 {
				level = slog.LevelError
			}
			s.Log.Log(r.Context(), level, "request", "method", r.Method, "path", r.URL.Path, "status", seen.status,
				"bytes", seen.bytes, "ms", time.Since(begun).Milliseconds(), "from", r.RemoteAddr)
		}()
		next.ServeHTTP(seen, r)
	})
}

// seenWriter remembers what was answered.
type seenWriter struct {
	http.ResponseWriter
	status int
	bytes  int64
}

// WriteHeader remembers the status.
func (w *seenWriter) WriteHeader(status int) {
	if w.status == 0 {
		w.status = status
	}
	w.ResponseWriter.WriteHeader(status)
}

// Write counts the bytes.
func (w *seenWriter) Write(data []byte) (int, error) {
	if w.status == 0 {
		w.status = http.StatusOK
	}
	n, err := w.ResponseWriter.Write(data)
	w.bytes += int64(n)
	return n, err
}

// Unwrap returns the writer itself, for deadlines.
func (w *seenWriter) Unwrap() http.ResponseWriter { return w.ResponseWriter }
