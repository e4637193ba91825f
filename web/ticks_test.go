package web

import "testing"

// What two devices tick comes together, and the word of the greatest turn counts.
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
		}
		return on
	}
	ask(`{"ticks": [{"key": "cut|1", "on": true, "turn": 2}]}`)
	ask(`{"ticks": [{"key": "cut|2", "on": true, "turn": 1}, {"key": "cut|1", "on": false, "turn": 1}, {"key": "cut|1", "on": false, "turn": 2}]}`)
	if on := ask(`{"ticks": []}`); len(on) != 2 || !on["cut|1"] || !on["cut|2"] {
		t.Errorf("%v", on)
	}
	if on := ask(`{"ticks": [{"key": "cut|1", "on": false, "turn": 3}]}`); on["cut|1"] {
		t.Errorf("%v", on)
	}
	c.want(422, "POST", path, `{"ticks": [{"key": "", "on": true, "turn": 1}]}`)
	c.want(422, "POST", path, `{"ticks": [{"key": "cut|1", "on": true, "turn": 0}]}`)
}
