package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
)

// documentTypes returns the types of the job document, from its schema.
func documentTypes(file string) (string, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	root, err := readValue(d)
	if err != nil {
		return "", fmt.Errorf("%s: %w", file, err)
	}
	schema := root.(object)
	var b strings.Builder
	fmt.Fprintf(&b, written, "job/schema.json")
	b.WriteString("\n" + declared("Job", schema))
	for _, def := range schema.object("$defs") {
		b.WriteString("\n" + declared(typeName(def.key), def.value.(object)))
	}
	return b.String(), nil
}

// object is a JSON object in the order in which it is written.
type object []member

type member struct {
	key   string
	value any
}

func (o object) get(key string) any {
	i := slices.IndexFunc(o, func(m member) bool { return m.key == key })
	if i < 0 {
		return nil
	}
	return o[i].value
}

func (o object) object(key string) object { v, _ := o.get(key).(object); return v }
func (o object) list(key string) []any    { v, _ := o.get(key).([]any); return v }
func (o object) text(key string) string   { v, _ := o.get(key).(string); return v }

// readValue reads one JSON value, objects as [object].
func readValue(d *json.Decoder) (any, error) {
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t {
	case json.Delim('{'):
		o := object{}
		for d.More() {
			key, err := d.Token()
			if err != nil {
				return nil, err
			}
			value, err := readValue(d)
			if err != nil {
				return nil, err
			}
			o = append(o, member{key.(string), value})
		}
		_, err = d.Token()
		return o, err
	case json.Delim('['):
		list := []any{}
		for d.More() {
			value, err := readValue(d)
			if err != nil {
				return nil, err
			}
			list = append(list, value)
		}
		_, err = d.Token()
		return list, err
	case json.Delim('}'), json.Delim(']'):
		return nil, errors.New("a bracket closes nothing")
	}
	return t, nil
}

func typeName(key string) string { return strings.ToUpper(key[:1]) + key[1:] }

func declared(name string, o object) string {
	doc := comment(wrapped(o.text("description")), "")
	if o.text("type") == "object" {
		return doc + "export interface " + name + " " + members(o, "") + "\n"
	}
	return doc + "export type " + name + " = " + typed(o, "") + ";\n"
}

// members returns the body of an object's type.
func members(o object, indent string) string {
	required := o.list("required")
	var b strings.Builder
	b.WriteString("{\n")
	for _, p := range o.object("properties") {
		key, value := p.key, p.value.(object)
		if !slices.Contains(required, any(key)) {
			key += "?"
		}
		b.WriteString(comment(wrapped(value.text("description")), indent+"  "))
		b.WriteString(indent + "  " + key + ": " + typed(value, indent+"  ") + ";\n")
	}
	b.WriteString(indent + "}")
	return b.String()
}

// typed returns the type of what a schema describes. Limits on sizes are the
// planner's to check.
func typed(o object, indent string) string {
	if ref := o.text("$ref"); ref != "" {
		return typeName(strings.TrimPrefix(ref, "#/$defs/"))
	}
	if c := o.get("const"); c != nil {
		return fmt.Sprint(c)
	}
	if words := o.list("enum"); words != nil {
		return union(words, literal)
	}
	if some := o.list("oneOf"); some != nil {
		return union(some, func(v any) string { return typed(v.(object), indent) })
	}
	switch kind := o.get("type").(type) {
	case []any:
		return union(kind, func(v any) string { return v.(string) })
	case string:
		return plain(kind, o, indent)
	}
	return "unknown"
}

func plain(kind string, o object, indent string) string {
	switch kind {
	case "object":
		return members(o, indent)
	case "array":
		return array(o, indent)
	case "integer":
		return "number"
	}
	return kind
}

func array(o object, indent string) string {
	if tuple := o.list("prefixItems"); tuple != nil {
		var inner []string
		for _, v := range tuple {
			inner = append(inner, typed(v.(object), indent))
		}
		return "[" + strings.Join(inner, ", ") + "]"
	}
	inner := typed(o.object("items"), indent)
	if strings.Contains(inner, " | ") && !strings.HasPrefix(inner, "{") {
		inner = "(" + inner + ")"
	}
	return inner + "[]"
}

func union(values []any, write func(any) string) string {
	var parts []string
	for _, v := range values {
		parts = append(parts, write(v))
	}
	return strings.Join(parts, " | ")
}

func literal(v any) string {
	if s, ok := v.(string); ok {
		return `"` + s + `"`
	}
	return fmt.Sprint(v)
}
