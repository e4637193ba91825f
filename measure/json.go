package measure

import (
	"bytes"
	"encoding/json"
)

// MarshalJSON writes the length as a number of millimetres with as many of six
// decimals as it needs: 2502, -0.396875. Every nanometre is kept, in a reader
// that holds numbers as float64 too, up to 9 007 km.
func (l Length) MarshalJSON() ([]byte, error) { return appendDecimal(nil, int64(l), 6), nil }

// UnmarshalJSON reads a number of millimetres, or a text that states its unit
// as [Length.UnmarshalText] reads it. null leaves the length as it is.
func (l *Length) UnmarshalJSON(data []byte) error {
	switch data = bytes.TrimSpace(data); {
	case bytes.Equal(data, []byte("null")):
		return nil
	case len(data) > 0 && data[0] == '"':
		var text string
		if err := json.Unmarshal(data, &text); err != nil {
			return err
		}
		return l.UnmarshalText([]byte(text))
	}
	n, err := ParseLength(string(data), Millimetres)
	if err == nil {
		*l = n
	}
	return err
}
