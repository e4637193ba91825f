package web

import (
	"testing"
	"time"
)

// What two devices tick comes together, and the later word counts.
func TestTicks(t *testing.T) {
	c := newClient(t, nil)
	path := "/api/jobs/" + jobID(1) + "/ticks"
	c.want(404, "POST", path, `{"ticks": []}`)
	c.want(201, "PUT", "/api/jobs/"+jobID(1), `{"document": {"name": "Hall"}}`, "If-None-Match", "*")
	ask := func(body string) map[string]bool {
		t.Helper()
		on := map[string]bool{}
		for _, tick := range into[TicksBody](t, c.want(200, "POST", path, body)).Ticks {
			on[tick.Key] = tick.On
			if tick.At.After(time.Now().Add(time.Minute)) {
				t.Errorf("%+v is of the future", tick)
			}
		}
		return on
	}
	ask(`{"ticks": [{"key": "cut|1", "on": true, "at": "2026-01-02T10:00:00Z"}]}`)
	ask(`{"ticks": [{"key": "cut|2", "on": true, "at": "2999-01-02T10:00:00Z"}, {"key": "cut|1", "on": false, "at": "2026-01-02T09:00:00Z"}]}`)
	if on := ask(`{"ticks": []}`); len(on) != 2 || !on["cut|1"] || !on["cut|2"] {
		t.Errorf("%v", on)
	}
	if on := ask(`{"ticks": [{"key": "cut|1", "on": false, "at": "2026-01-02T11:00:00Z"}]}`); on["cut|1"] {
		t.Errorf("%v", on)
	}
	c.want(422, "POST", path, `{"ticks": [{"key": "", "on": true, "at": "2026-01-02T10:00:00Z"}]}`)
}
