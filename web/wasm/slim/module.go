package main

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// A module is a header and sections, each with a number, its length in bytes, and its
// bytes (WebAssembly Core Specification 2.0, 5.5). Numbers are LEB128 (5.2.2).

var header = []byte("\x00asm\x01\x00\x00\x00")

// dataSection is the number of the section that fills the memory (5.5.14).
const dataSection = 11

// section is one section of a module.
type section struct {
	id   byte
	body []byte
}

var errCut = errors.New("the file ends where more must follow")

// sectionsOf takes a module apart.
func sectionsOf(module []byte) (all []section, err error) {
	if !bytes.HasPrefix(module, header) {
		return nil, errors.New("this is no WebAssembly module of version 1")
	}
	r := &reader{module[len(header):]}
	for len(r.rest) > 0 {
		id, err := r.byte()
		if err != nil {
			return nil, err
		}
		body, err := r.bytes()
		if err != nil {
			return nil, err
		}
		all = append(all, section{id, body})
	}
	return all, nil
}

// join puts a module together.
func join(all []section) []byte {
	out := bytes.Clone(header)
	for _, s := range all {
		out = append(out, s.id)
		out = appendBytes(out, s.body)
	}
	return out
}

// reader reads what stands at the beginning of the rest.
type reader struct{ rest []byte }

func (r *reader) byte() (byte, error) {
	if len(r.rest) == 0 {
		return 0, errCut
	}
	b := r.rest[0]
	r.rest = r.rest[1:]
	return b, nil
}

// unsigned reads a number without a sign.
func (r *reader) unsigned() (uint64, error) {
	n, size := binary.Uvarint(r.rest)
	if size <= 0 {
		return 0, errCut
	}
	r.rest = r.rest[size:]
	return n, nil
}

// signed reads a number with a sign: the last byte's second bit stands for all above.
func (r *reader) signed() (int64, error) {
	var n int64
	for shift := 0; shift < 64; shift += 7 {
		b, err := r.byte()
		if err != nil {
			return 0, err
		}
		n |= int64(b&0x7f) << shift
		if b&0x80 == 0 {
			if b&0x40 != 0 && shift < 57 {
				n |= -1 << (shift + 7)
			}
			return n, nil
		}
	}
	return 0, errors.New("a number is longer than 64 bits")
}

// bytes reads a length and so many bytes.
func (r *reader) bytes() ([]byte, error) {
	n, err := r.unsigned()
	if err != nil || n > uint64(len(r.rest)) {
		return nil, errCut
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b, nil
}

func appendBytes(out, b []byte) []byte {
	return append(binary.AppendUvarint(out, uint64(len(b))), b...)
}

// appendSigned writes a number with a sign, as short as it goes.
func appendSigned(out []byte, n int64) []byte {
	for n < -64 || n > 63 {
		out = append(out, byte(n)|0x80)
		n >>= 7
	}
	return append(out, byte(n)&0x7f)
}
