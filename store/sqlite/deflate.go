package sqlite

import (
	"bytes"
	"compress/flate"
	"fmt"
	"io"
	"sync"
)

// A job has many versions that are nearly alike, and all of them are kept:
// deflated they take about a tenth.

var deflaters = sync.Pool{New: func() any {
	w, err := flate.NewWriter(io.Discard, flate.BestSpeed)
	if err != nil {
		panic(err) // only for a level that there is not
	}
	return w
}}

func deflate(data []byte) []byte {
	w := deflaters.Get().(*flate.Writer)
	defer deflaters.Put(w)
	var b bytes.Buffer
	w.Reset(&b)
	_, _ = w.Write(data) // a buffer takes everything
	_ = w.Close()
	return b.Bytes()
}

var inflaters = sync.Pool{New: func() any { return flate.NewReader(bytes.NewReader(nil)) }}

// inflate returns the bytes, which are of that size.
func inflate(packed []byte, size int) ([]byte, error) {
	r := inflaters.Get().(io.ReadCloser)
	defer inflaters.Put(r)
	if err := r.(flate.Resetter).Reset(bytes.NewReader(packed), nil); err != nil {
		return nil, err
	}
	data := make([]byte, size)
	if _, err := io.ReadFull(r, data); err != nil {
		return nil, fmt.Errorf("a document is damaged: %w", err)
	}
	return data, nil
}
