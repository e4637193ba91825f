package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// Go keeps a table of its functions in memory. A header says where its parts stand,
// counted from the header (cmd/link/internal/ld/pcln.go, runtime/symtab.go of Go 1.26):
//
//	header   magic, sizes, number of functions, where the parts begin
//	names    of functions                                       stays
//	units    files by the package they were compiled in         goes
//	files    names of files                                     goes
//	pctab    tables: by instruction, a number                   those of files and lines go
//	pclntab  functions: their entries, and which tables are theirs
//
// A function without a table of lines is one that Go knows too: its place is "?". A table
// that is also some other function's table of something else stays.

// Where things stand in the header and in what is said of a function, in bytes.
const (
	headerSize = 72
	entrySize  = 8 // of a function in the list of entries: its code, and where more is said
	funcSize   = 44

	pcspAt      = 16 // the first of three: of the stack, of files, of lines
	pcfileAt    = 20
	pclnAt      = 24
	countAt     = 28 // how many tables follow funcSize
	unitAt      = 32
	startLineAt = 36
)

var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8} // of Go 1.20 and later, with pointers of 8 bytes

var errTables = errors.New("the table of functions is laid out otherwise than Go 1.26 does it")

// forgetLines takes out which line of which file an instruction comes from.
func (m *memory) forgetLines() error {
	t, err := tableIn(m.image)
	if err != nil {
		return err
	}
	return t.forgetLines()
}

// tableIn finds the table of functions in memory.
func tableIn(image []byte) (*table, error) {
	at := bytes.Index(image, magic)
	if at < 0 || len(image)-at < headerSize || bytes.Contains(image[at+1:], magic) {
		return nil, errTables
	}
	t := &table{image: image[at:]}
	for i := range t.part {
		t.part[i] = int(binary.LittleEndian.Uint64(t.image[32+8*i:]))
	}
	t.count = int(binary.LittleEndian.Uint64(t.image[8:]))
	if !slices.IsSorted(t.part[:]) || t.part[names] != headerSize || t.part[functions] > len(t.image) ||
		t.count < 0 || t.count > (len(t.image)-t.part[functions])/entrySize {
		return nil, errTables
	}
	return t, nil
}

// Parts of the table.
const (
	names = iota
	units
	files
	tables
	functions
)

// table is the table of functions; image begins with its header.
type table struct {
	image []byte
	part  [functions + 1]int
	count int
}

// function returns what is said of a function.
func (t *table) function(i int) ([]byte, error) {
	list := t.image[t.part[functions]:]
	more := int(binary.LittleEndian.Uint32(list[i*entrySize+4:]))
	if more+funcSize > len(list) {
		return nil, errTables
	}
	f := list[more:]
	if size := funcSize + 4*int(binary.LittleEndian.Uint32(f[countAt:])); size < len(f) {
		return f[:size], nil
	}
	return nil, errTables
}

func (t *table) forgetLines() error {
	wanted, begins := map[int]bool{0: true}, []int{t.part[functions] - t.part[tables]}
	for i := range t.count {
		f, err := t.function(i)
		if err != nil {
			return err
		}
		for at := pcspAt; at < len(f); at += 4 {
			if at >= countAt && at < funcSize {
				continue
			}
			table := int(binary.LittleEndian.Uint32(f[at:]))
			begins = append(begins, table)
			wanted[table] = wanted[table] || at != pcfileAt && at != pclnAt
		}
		clear(f[pcfileAt:countAt])
		clear(f[unitAt : startLineAt+4])
	}
	slices.Sort(begins)
	begins = slices.Compact(begins)
	if begins[len(begins)-1] != t.part[functions]-t.part[tables] {
		return errTables
	}
	for i, b := range begins[1:] {
		if !wanted[begins[i]] {
			clear(t.image[t.part[tables]+begins[i] : t.part[tables]+b])
		}
	}
	clear(t.image[t.part[units]:t.part[tables]])
	return nil
}
