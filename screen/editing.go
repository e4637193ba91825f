package screen

import (
	"encoding/json"
	"errors"

	"firstdrop/job"
)

// document is a job document taken apart as far as it is changed for a question:
// the rest stays as the user typed it.
type document struct {
	top    map[string]json.RawMessage
	papers []map[string]json.RawMessage
	hang   []map[string]json.RawMessage
}

// editable takes a document apart. It has an entry of hang, also where the job
// leaves it out.
func editable(text json.RawMessage) (*document, error) {
	d := &document{}
	if err := json.Unmarshal(text, &d.top); err != nil {
		return nil, &refusal{"screen.misshapen", []any{"part", "job"}}
	}
	for key, list := range map[string]*[]map[string]json.RawMessage{"papers": &d.papers, "hang": &d.hang} {
		if d.top[key] == nil {
			continue
		}
		if err := json.Unmarshal(d.top[key], list); err != nil {
			return nil, &refusal{"screen.misshapen", []any{"part", key}}
		}
	}
	if len(d.hang) == 0 && len(d.papers) > 0 {
		d.hang = []map[string]json.RawMessage{{"paper": d.papers[0]["name"]}}
	}
	for i := range d.hang {
		if d.hang[i] == nil {
			d.hang[i] = map[string]json.RawMessage{}
		}
	}
	return d, nil
}

// exchange puts a paper in place of the one of that name, or of the only one, and
// returns where it stands.
func (d *document) exchange(name string, paper json.RawMessage) (at int, err error) {
	var fields map[string]json.RawMessage
	if err := json.Unmarshal(paper, &fields); err != nil {
		return 0, &refusal{"screen.misshapen", []any{"part", "paper"}}
	}
	at = -1
	for i := range d.papers {
		if nameOf(d.papers[i]["name"]) == name || name == "" && len(d.papers) == 1 {
			at = i
		}
	}
	if at < 0 {
		return 0, &refusal{"screen.no-paper", []any{"paper", job.Clip(name)}}
	}
	was := nameOf(d.papers[at]["name"])
	d.papers[at] = fields
	for _, h := range d.hang {
		if nameOf(h["paper"]) != was {
			continue
		}
		h["paper"] = fields["name"]
		if fields["name"] == nil {
			delete(h, "paper")
		}
		delete(h, "design") // it counts in the repeat of the paper before
	}
	return at, nil
}

// nameOf reads a name, which may be written as a number.
func nameOf(raw json.RawMessage) string {
	var text string
	if json.Unmarshal(raw, &text) == nil {
		return text
	}
	return string(raw)
}

// read puts the document together again and reads it.
func (d *document) read() (*job.Draft, error) {
	text, err := d.text()
	if err != nil {
		return nil, err
	}
	return job.ReadDraft(text), nil
}

// text puts the document together again.
func (d *document) text() (json.RawMessage, error) {
	var err error
	set := func(key string, list []map[string]json.RawMessage) {
		if len(list) == 0 {
			return
		}
		text, wrong := json.Marshal(list)
		d.top[key], err = text, errors.Join(err, wrong)
	}
	set("papers", d.papers)
	set("hang", d.hang)
	text, wrong := json.Marshal(d.top)
	return text, errors.Join(err, wrong)
}
