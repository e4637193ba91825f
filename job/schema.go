package job

import (
	_ "embed"
	"slices"
)

//go:embed schema.json
var schema []byte

// Schema returns the JSON Schema (draft 2020-12) of a job document, with a
// description of every key in the words of the trade. It says what the format
// is; [Read] checks besides whether the sizes make sense. The caller may change
// the copy.
func Schema() []byte { return slices.Clone(schema) }
