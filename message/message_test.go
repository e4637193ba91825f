package message_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"firstdrop/message"
)

func TestMessage(t *testing.T) {
	cause := errors.New("too far")
	inner := message.New("far", "{n} m is too far", "n", 3).Because(cause)
	m := message.New("unreadable", "{text}: {why}", "text", "3 {why}", "why", inner)
	if got, want := m.Error(), "3 3 m is too far: 3 m is too far"; got == want {
		t.Errorf("what an argument holds was filled in: %q", got)
	}
	if got, want := m.Error(), "3 {why}: 3 m is too far"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	data, err := json.Marshal(m)
	want := `{"code":"unreadable","args":{"text":"3 {why}","why":{"code":"far","args":{"n":3}}}}`
	if err != nil || string(data) != want {
		t.Errorf("%s, %v; want %s", data, err, want)
	}
	if !errors.Is(inner, cause) {
		t.Error("the cause is lost")
	}
	if v, ok := m.Arg("text"); v != "3 {why}" || !ok {
		t.Errorf("text is %v, %v", v, ok)
	}
	if _, ok := m.Arg("nothing"); ok {
		t.Error("there is an argument that was not given")
	}
}

func TestOf(t *testing.T) {
	m := message.New("far", "too far")
	for _, c := range []struct {
		err  error
		want string
	}{
		{m, "far"},
		{fmt.Errorf("wrapped: %w", m), "far"},
		{teller{}, "told"},
		{errors.New("anything"), "other"},
	} {
		if got := message.Of(c.err); got.Code != c.want {
			t.Errorf("%v: %q, want %q", c.err, got.Code, c.want)
		}
	}
	if got := message.Of(errors.New("anything")).Error(); got != "anything" {
		t.Errorf("%q", got)
	}
	if got := (message.Message{Code: "bare"}).Error(); got != "bare" {
		t.Errorf("%q", got)
	}
}

type teller struct{}

func (teller) Error() string         { return "" }
func (teller) Said() message.Message { return message.New("told", "") }
