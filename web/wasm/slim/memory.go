package main

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// memory is what a program begins with: bytes from an address on. All else is zero.
type memory struct {
	from  int64
	image []byte
}

// Instructions that say where a piece goes (WebAssembly Core Specification 2.0, 5.4).
const (
	i32Const = 0x41
	end      = 0x0b
)

// mostMemory is the size up to which a program's memory is believed.
const mostMemory = 256 << 20

// piece is a part of the memory that is not zero.
type piece struct {
	at   int64
	data []byte
}

// memoryOf lays out the pieces of a data section, in their order.
func memoryOf(body []byte) (*memory, error) {
	r := &reader{body}
	n, err := r.unsigned()
	if err != nil {
		return nil, err
	}
	var pieces []piece
	from, to := int64(math.MaxInt64), int64(0)
	for i := range n {
		p, err := r.piece()
		if err != nil {
			return nil, fmt.Errorf("piece %d of %d: %w", i+1, n, err)
		}
		pieces = append(pieces, p)
		from, to = min(from, p.at), max(to, p.at+int64(len(p.data)))
	}
	if len(pieces) == 0 {
		return &memory{}, nil
	}
	if from < 0 || to > mostMemory {
		return nil, fmt.Errorf("memory from %d to %d is none that a program begins with", from, to)
	}
	m := &memory{from, make([]byte, to-from)}
	for _, p := range pieces {
		copy(m.image[p.at-from:], p.data)
	}
	return m, nil
}

// piece reads one piece, which must go to a fixed address of the only memory.
func (r *reader) piece() (p piece, err error) {
	kind, err := r.unsigned()
	if err != nil {
		return p, err
	}
	op, err := r.byte()
	if kind != 0 || err != nil || op != i32Const {
		return p, errors.New("it has no fixed address")
	}
	if p.at, err = r.signed(); err != nil {
		return p, err
	}
	if op, err = r.byte(); err != nil || op != end {
		return p, errors.New("it has no fixed address")
	}
	p.data, err = r.bytes()
	return p, err
}

// dull is how many zeros in a row are worth a new piece.
const dull = 4096

// section writes the memory as a data section.
func (m *memory) section() []byte {
	var pieces []byte
	n := uint64(0)
	for at := 0; at < len(m.image); {
		from := at + zeros(m.image[at:])
		to := from
		for to < len(m.image) {
			z := zeros(m.image[to:])
			if z >= dull || to+z == len(m.image) {
				break
			}
			to += max(z, 1)
		}
		if to > from {
			pieces = append(pieces, 0, i32Const)
			pieces = append(appendSigned(pieces, m.from+int64(from)), end)
			pieces = appendBytes(pieces, m.image[from:to])
			n++
		}
		at = to + zeros(m.image[to:])
	}
	return append(binary.AppendUvarint(nil, n), pieces...)
}

// zeros counts the zeros that some bytes begin with.
func zeros(b []byte) int {
	for i, x := range b {
		if x != 0 {
			return i
		}
	}
	return len(b)
}
