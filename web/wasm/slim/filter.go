package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// A filtered program holds the same as the program, written so that what is alike in
// meaning is alike in bytes, as the filters of PNG do it before they compress
// (W3C Portable Network Graphics 3, 9). The screen's unfilter.ts puts it back to the byte.
//
//	header    "filtered wasm 1\n"
//	length    of the program
//	sections  each: its number, the length of its body in the program, and its body
//
// Bodies stay as they are, but for three sections. Of the elements, each function is
// written as its distance from the one before. Of the data, Go's list of functions (see
// lines.go): the place of each function's code and of what more is said of it, and there
// of its code and its name, each as the distance from that of the function before; where
// in the body the list begins, and how many functions it has, stand before the body, or two
// zeros. Of the code
//
//	in the program                  filtered
//	length of a function's body     goes: it follows from its instructions
//	br depth, br_if depth           counted from the function inwards, not from the branch outwards
//	br_table depth, depth, …        each the distance from the one before
//	i64.const F<<16|place           0xff distance from the place before
//	i32.const place, local.set 0,   0xfe distance from the place before
//	  br
//
// The last two are how Go calls and jumps (cmd/internal/obj/wasm/wasmobj.go of Go 1.26):
// functions are cut into places that are numbered from 0. Each call leaves F, which is
// 0x1000 and the function's own number, with the place after the call on Go's stack; a
// jump puts the place it goes to into the first local. Places count up through a
// function, and so their distances are nearly always the same small numbers.
const filteredHeader = "filtered wasm 1\n"

// Sections that are filtered (WebAssembly Core Specification 2.0, 5.5).
const (
	elementSection = 9
	codeSection    = 10
)

// What stands for the instructions of Go's calls and jumps: no instructions of WebAssembly.
const (
	jumpPlace   = 0xfe
	returnPlace = 0xff
)

const firstFunction = 0x1000 // is added to a function's number in an address of code

var (
	errLong     = errors.New("a number is longer than it need be")
	errElements = errors.New("the table of functions is filled otherwise than Go 1.26 does it")
	errDepth    = errors.New("a branch leads out of its function")
)

// filter writes a program in filtered form. It fails for a program that uses more of
// WebAssembly than Go 1.26 does.
func filter(program []byte) ([]byte, error) {
	sections, err := sectionsOf(program)
	if err != nil {
		return nil, err
	}
	if !bytes.Equal(join(sections), program) {
		return nil, errLong // a length of a section
	}
	f := &filtering{out: binary.AppendUvarint([]byte(filteredHeader), uint64(len(program)))}
	for _, s := range sections {
		f.rest = s.body
		f.out = append(f.out, s.id)
		f.out = binary.AppendUvarint(f.out, uint64(len(s.body)))
		switch s.id {
		case elementSection:
			f.elements()
		case codeSection:
			f.code()
		case dataSection:
			f.data()
		default:
			f.copy(len(f.rest))
		}
		if f.err == nil && len(f.rest) > 0 {
			f.err = errors.New("more follows than it holds")
		}
		if f.err != nil {
			return nil, fmt.Errorf("section %d: %w", s.id, f.err)
		}
	}
	return f.out, nil
}

// filtering is a section on its way: what is left of it, what was written, and the
// first thing that was wrong. After that nothing more is read.
type filtering struct {
	reader
	out []byte
	err error
}

// byte copies a byte, and returns it.
func (f *filtering) byte() byte {
	at := f.copy(1)
	if len(at) == 0 {
		return 0
	}
	return at[0]
}

// copy copies so many bytes, and returns them.
func (f *filtering) copy(n int) []byte {
	if f.err == nil && n > len(f.rest) {
		f.err = errCut
	}
	if f.err != nil {
		return nil
	}
	from := f.rest[:n]
	f.out = append(f.out, from...)
	f.rest = f.rest[n:]
	return from
}

// number copies a number, whether or not it has a sign.
func (f *filtering) number() {
	for f.byte()&0x80 != 0 {
	}
}

// unsigned reads a number that will be written otherwise.
func (f *filtering) unsigned() uint64 {
	if f.err != nil {
		return 0
	}
	before := f.rest
	n, err := f.reader.unsigned()
	if f.err = err; err == nil && (n > math.MaxUint32 || !bytes.HasPrefix(before, binary.AppendUvarint(nil, n))) {
		f.err = errLong
	}
	return n
}

// count copies a number and returns it. What it counts takes a byte each at least.
func (f *filtering) count() int {
	n := f.unsigned()
	if f.err == nil && n > uint64(len(f.rest)) {
		f.err = errCut
	}
	if f.err != nil {
		return 0
	}
	f.out = binary.AppendUvarint(f.out, n)
	return int(n)
}

// distances writes so many numbers as distances, the first from 0.
func (f *filtering) distances(n int) {
	for last := int64(0); n > 0; n-- {
		next := int64(f.unsigned())
		f.out = appendSigned(f.out, next-last)
		last = next
	}
}

// elements filters what the table of functions is filled with (5.5.12).
func (f *filtering) elements() {
	for range f.count() {
		f.expect(0) // functions from a fixed index of the only table
		f.expect(i32Const)
		f.number()
		f.expect(end)
		f.distances(f.count())
	}
}

// expect copies a byte of the elements that must be this one.
func (f *filtering) expect(b byte) {
	if f.byte() != b && f.err == nil {
		f.err = errElements
	}
}

// code filters the functions (5.5.13).
func (f *filtering) code() {
	for i := range f.count() {
		body := &filtering{reader: reader{f.body()}, out: f.out, err: f.err}
		body.function(int64(firstFunction + i))
		if body.err == nil && len(body.rest) > 0 {
			body.err = errors.New("instructions follow its end")
		}
		if f.out, f.err = body.out, body.err; f.err != nil {
			f.err = fmt.Errorf("function %d: %w", i, f.err)
			return
		}
	}
}

// body reads the body of a function; its length goes.
func (f *filtering) body() []byte {
	n := f.unsigned()
	if f.err == nil && n > uint64(len(f.rest)) {
		f.err = errCut
	}
	if f.err != nil {
		return nil
	}
	body := f.rest[:n]
	f.rest = f.rest[n:]
	return body
}

// function filters a body: its locals, and its instructions to the end.
func (f *filtering) function(number int64) {
	for range f.count() {
		f.number()
		f.byte()
	}
	place := int64(0)
	for depth := 0; f.err == nil; {
		switch op := f.byte(); operands[op] {
		case none:
		case oneNumber:
			f.number()
		case twoNumbers:
			f.number()
			f.number()
		case fourBytes:
			f.copy(4)
		case eightBytes:
			f.copy(8)
		case opens:
			f.number()
			depth++
		case closes:
			if depth == 0 {
				return
			}
			depth--
		case branch:
			out := f.unsigned()
			if out > uint64(depth) {
				f.err = errDepth
			}
			f.out = binary.AppendUvarint(f.out, uint64(depth)-out)
		case branchTable:
			f.distances(f.count() + 1)
		case constant:
			place = f.constant(op, number, place)
		case more:
			f.more()
		default:
			f.err = fmt.Errorf("instruction %#02x, which Go 1.26 does not write", op)
		}
	}
}

// constant filters a constant; a place becomes the one that others are counted from when
// a call returns to it.
func (f *filtering) constant(op byte, number, place int64) int64 {
	before := f.rest
	n, err := f.reader.signed()
	switch {
	case err != nil || !bytes.HasPrefix(before, appendSigned(nil, n)):
	case op == i64Const && n>>16 == number:
		f.out[len(f.out)-1] = returnPlace
		f.out = appendSigned(f.out, n&0xffff-place)
		return n & 0xffff
	case op == i32Const && n>>16 == 0 && bytes.HasPrefix(f.rest, []byte{localSet, 0, br}):
		f.out[len(f.out)-1] = jumpPlace
		f.out = appendSigned(f.out, n-place)
		return place
	}
	f.rest = before
	f.number()
	return place
}

// more copies the operands of an instruction of two bytes.
func (f *filtering) more() {
	switch op := f.byte(); op {
	case 0, 1, 2, 3, 4, 5, 6, 7: // to whole numbers, as near as they go
	case 10: // memory.copy
		f.copy(2)
	case 11: // memory.fill
		f.copy(1)
	default:
		if f.err == nil {
			f.err = fmt.Errorf("instruction 0xfc %#02x, which Go 1.26 does not write", op)
		}
	}
}

// Instructions that are looked at (5.4).
const (
	br       = 0x0c
	localSet = 0x21
	i64Const = 0x42
)

// data filters what the memory begins with: Go's list of functions in it.
func (f *filtering) data() {
	at, count := listOfFunctions(f.rest)
	f.out = binary.AppendUvarint(f.out, uint64(at))
	f.out = binary.AppendUvarint(f.out, uint64(count))
	begin := len(f.out) + at
	f.copy(len(f.rest))
	list := f.out[begin:]
	more := func(i int) []byte { return list[binary.LittleEndian.Uint32(list[entrySize*i+4:]):] }
	for i := count - 1; i > 0; i-- { // the last first: the distance from one that is not yet one
		takeOff(more(i), more(i-1))
		takeOff(list[entrySize*i:], list[entrySize*(i-1):])
	}
}

// takeOff makes two numbers of 32 bits distances from two others.
func takeOff(these, those []byte) {
	for at := 0; at < 8; at += 4 {
		n := binary.LittleEndian.Uint32(these[at:]) - binary.LittleEndian.Uint32(those[at:])
		binary.LittleEndian.PutUint32(these[at:], n)
	}
}

// listOfFunctions finds Go's list of functions in a data section, where it lies in one
// piece with what is said of each of them in turn. Otherwise both are 0.
func listOfFunctions(body []byte) (at, count int) {
	m, err := memoryOf(body)
	if err != nil {
		return 0, 0
	}
	t, err := tableIn(m.image)
	if err != nil {
		return 0, 0
	}
	list := t.image[t.part[functions]:]
	end := t.count * entrySize
	for i := range t.count {
		more := int(binary.LittleEndian.Uint32(list[i*entrySize+4:]))
		f, err := t.function(i)
		if err != nil || more < end {
			return 0, 0
		}
		end = more + len(f)
	}
	if at = bytes.Index(body, list[:end]); at <= 0 {
		return 0, 0
	}
	return at, t.count
}

// operand is what follows the byte of an instruction.
type operand byte

const (
	unknown operand = iota
	none
	oneNumber
	twoNumbers
	fourBytes
	eightBytes
	opens
	closes
	branch
	branchTable
	constant
	more
)

// operands says what follows each instruction (5.4).
var operands = func() (all [256]operand) {
	for _, r := range []struct {
		from, to byte
		what     operand
	}{
		{0x00, 0x01, none},
		{0x02, 0x04, opens},
		{0x05, 0x05, none},
		{0x0b, 0x0b, closes},
		{br, 0x0d, branch},
		{0x0e, 0x0e, branchTable},
		{0x0f, 0x0f, none},
		{0x10, 0x10, oneNumber},
		{0x11, 0x11, twoNumbers},
		{0x1a, 0x1b, none},
		{0x20, 0x24, oneNumber},
		{0x28, 0x3e, twoNumbers},
		{0x3f, 0x40, oneNumber},
		{i32Const, i64Const, constant},
		{0x43, 0x43, fourBytes},
		{0x44, 0x44, eightBytes},
		{0x45, 0xc4, none},
		{0xfc, 0xfc, more},
	} {
		for op := int(r.from); op <= int(r.to); op++ {
			all[op] = r.what
		}
	}
	return all
}()
