package job

import (
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/geom"
	"firstdrop/message"
	"firstdrop/room"
)

// field is one key of a mapping, as the tag of a struct's field names it.
type field struct {
	name       string
	index      int
	isRequired bool
	isFlow     bool     // printed on one line
	isRows     bool     // a list with one item a line
	words      []string // what a text may be; nil: anything
}

// fieldsOf returns the fields that have a key, in the order in which they are
// printed.
func fieldsOf(t reflect.Type) []field {
	var fields []field
	for i := range t.NumField() {
		tag, ok := t.Field(i).Tag.Lookup("job")
		if !ok {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		f := field{name: name, index: i, isRequired: options == "required", isFlow: options == "flow", isRows: options == "rows"}
		if words := t.Field(i).Tag.Get("words"); words != "" {
			f.words = strings.Split(words, ",")
		}
		fields = append(fields, f)
	}
	return fields
}

// Limits of a document. A job of a whole corridor needs a few hundred walls.
const (
	maxSize    = 8 << 20 // bytes
	maxEntries = 200_000 // lines, commas and colons: what takes time to read
	maxDepth   = 50      // mappings and lists within one another
	maxItems   = 1_000   // of any list
	maxAtWall  = 60      // openings of one wall
	maxAtWalls = 2_000   // openings of all walls
	maxHung    = 10_000  // walls of all hang entries
	maxName    = 100     // characters of a name
	maxText    = 10_000  // characters of any other text
)

// reader turns the nodes of a document into a job, and gathers what is wrong.
type reader struct {
	scale
	source   *source
	problems Problems
	fields   map[reflect.Type][]field
	unitless bool     // a number without a unit has been reported, or units is itself at fault
	faulty   []string // paths of parts that could not be read
}

func (r *reader) refuse(path string, at place, code string, args ...any) {
	r.refuseSaying(path, at, says(code, args...))
}

func (r *reader) refuseSaying(path string, at place, what message.Message) {
	r.problems = append(r.problems, Problem{r.source.file, at.line, at.column, path, what})
	r.faulty = append(r.faulty, path)
}

// read fills v from the node. It goes on after a problem, and leaves v as it is
// where it cannot make sense of the node.
func (r *reader) read(n *Node, v reflect.Value, path string) {
	r.source.places[path] = n.place()
	if !r.isPlain(n, path) {
		return
	}
	if v.Kind() == reflect.Pointer {
		made := reflect.New(v.Type().Elem())
		r.read(n, made.Elem(), path)
		v.Set(made)
		return
	}
	switch own := v.Addr().Interface().(type) {
	case shaped:
		own.readNode(r, n, path)
		return
	case *geom.Point:
		r.point(n, own, path)
		return
	case *room.Sides:
		r.sides(n, own, path)
		return
	}
	if read, ok := scalars[v.Type()]; ok {
		r.scalar(n, path, func() error { return read(r.scale, n.Value, v) })
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		r.mapping(n, v, path)
	case reflect.Slice:
		r.list(n, v, path)
	default:
		r.plainScalar(n, v, path)
	}
}

// isPlain refuses what job files do not use, and nothing at all.
func (r *reader) isPlain(n *Node, path string) bool {
	what := any(says("part_this"))
	if k := key(path); k != "" {
		what = k
	}
	switch {
	case n.Refused != nil:
		r.refuseSaying(path, n.place(), *n.Refused)
	case n.Kind == Scalar && n.Scalar == Null:
		r.refuse(path, n.place(), "part_empty", "part", what)
	default:
		return true
	}
	return false
}

func quoted(text string) string { return strconv.Quote(Clip(text)) }

// Clip shortens a text for a message.
func Clip(text string) string {
	const most = 40
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most]) + "…"
}

// mapping fills a struct.
func (r *reader) mapping(n *Node, v reflect.Value, path string) {
	fields := r.fieldsOf(v.Type())
	if n.Kind != Keys {
		r.refuse(path, n.place(), "needs_keys", "part", orThis(path), "held", n.what(), "keys", strings.Join(names(fields), ", "))
		return
	}
	seen := map[string]place{}
	for i := 0; i+1 < len(n.Items); i += 2 {
		k, value := n.Items[i], n.Items[i+1]
		f := find(fields, k.Value)
		switch first, again := seen[k.Value]; {
		case k.Kind != Scalar:
			r.refuse(path, k.place(), "key_no_word", "held", k.what(), "keys", strings.Join(names(fields), ", "))
		case again:
			r.refuse(path, k.place(), "key_twice", "key", Clip(k.Value), "line", first.line)
		case f == nil:
			r.refuse(path, k.place(), "key_unknown", "key", quoted(k.Value), "part", orThis(path), "hint", suggest(k.Value, names(fields)))
		default:
			r.member(value, v.Field(f.index), f, join(path, f.name))
		}
		if _, again := seen[k.Value]; !again {
			seen[k.Value] = k.place()
		}
	}
	for _, f := range fields {
		if _, ok := seen[f.name]; f.isRequired && !ok {
			r.refuse(join(path, f.name), n.place(), "key_missing", "part", orThis(path), "key", f.name)
		}
	}
}

// member fills one field, and holds a text against the words it may be.
func (r *reader) member(n *Node, v reflect.Value, f *field, path string) {
	r.read(n, v, path)
	if f.words == nil || n.Kind != Scalar || v.String() == "" {
		return
	}
	for _, w := range f.words {
		if w == v.String() {
			return
		}
	}
	r.refuse(path, n.place(), "word_unknown", "key", f.name, "word", quoted(v.String()), "words", strings.Join(f.words, ", "))
}

func (r *reader) fieldsOf(t reflect.Type) []field {
	fields, ok := r.fields[t]
	if !ok {
		fields = fieldsOf(t)
		r.fields[t] = fields
	}
	return fields
}

func names(fields []field) []string {
	list := make([]string, len(fields))
	for i, f := range fields {
		list[i] = f.name
	}
	return list
}

func find(fields []field, name string) *field {
	for i := range fields {
		if fields[i].name == name {
			return &fields[i]
		}
	}
	return nil
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// items are the messages that say what the members of a list are called.
var items = map[string]string{
	"walls": "item_wall", "openings": "item_opening", "fittings": "item_fitting", "diagonals": "item_diagonal",
	"papers": "item_paper", "hang": "item_hang", "outline": "item_corner", "returns": "item_return",
	"also": "part_size", "rolls": "item_roll", "flaws": "item_flaw", "parts": "item_part", "goals": "item_goal",
}

// orThis names the part at a path for a message: "room", or the message that says
// "wall 3" for room.walls[2].
func orThis(path string) any {
	if path == "" {
		return says("part_job")
	}
	last := path[strings.LastIndexByte(path, '.')+1:]
	name, index, isItem := strings.Cut(strings.TrimSuffix(last, "]"), "[")
	if i, err := strconv.Atoi(index); isItem && err == nil && items[name] != "" {
		return says(items[name], "n", i+1)
	}
	return last
}

// list fills a slice. A list that is too long is refused before its items are
// looked at.
func (r *reader) list(n *Node, v reflect.Value, path string) {
	switch {
	case n.Kind != List:
		r.refuse(path, n.place(), "needs_list", "part", key(path), "held", n.what())
		return
	case len(n.Items) > maxItems:
		r.refuse(path, n.place(), "items_many", "part", key(path), "n", len(n.Items), "most", maxItems)
		return
	case len(n.Items) == 0:
		return
	}
	items := reflect.MakeSlice(v.Type(), len(n.Items), len(n.Items))
	for i, item := range n.Items {
		r.read(item, items.Index(i), path+"["+strconv.Itoa(i)+"]")
	}
	v.Set(items)
}

// plainScalar fills a text, a whole number, or true and false.
func (r *reader) plainScalar(n *Node, v reflect.Value, path string) {
	r.scalar(n, path, func() error {
		switch v.Kind() {
		case reflect.String:
			v.SetString(n.Value)
			return checkText(n.Value)
		case reflect.Bool:
			v.SetBool(n.Value == "true")
			return checkBool(n)
		}
		i, err := parseWhole(n.Value)
		v.SetInt(i)
		return err
	})
}

func checkBool(n *Node) error {
	switch isWord := n.Value == "true" || n.Value == "false"; {
	case !isWord:
		return says("not_true_false", "text", quoted(n.Value))
	case n.Scalar != Truth:
		return says("truth_quoted", "text", strconv.Quote(n.Value), "value", n.Value)
	}
	return nil
}

// parseWhole reads a whole number as it stands: no leading zeros, which YAML
// may take for octal, no separators, no decimals.
func parseWhole(text string) (int64, error) {
	i, err := strconv.ParseInt(text, 10, 64)
	switch {
	case err != nil || strconv.FormatInt(i, 10) != text:
		return 0, says("not_whole", "text", quoted(text))
	case i > 1_000_000_000 || i < -1_000_000_000:
		return 0, says("number_large", "text", text)
	}
	return i, nil
}

// checkText refuses text that cannot be printed.
func checkText(text string) error {
	if utf8.RuneCountInString(text) > maxText {
		return says("text_too_long", "most", maxText)
	}
	for _, c := range text {
		if isUnprintable(c) {
			return says("text_unprintable", "character", fmt.Sprintf("%U", c))
		}
	}
	return nil
}

// isUnprintable reports whether a character has no place in a text: control
// characters but for line breaks and tabs, what turns the direction of the text
// round, separators that some programs take for line breaks, and what is no
// character.
func isUnprintable(c rune) bool {
	switch {
	case c == '\n' || c == '\t':
		return false
	case unicode.IsControl(c), unicode.In(c, unicode.Zl, unicode.Zp, unicode.Bidi_Control, unicode.Noncharacter_Code_Point):
		return true
	}
	return c == utf8.RuneError || c == '\ufeff'
}

// scalar reads a single value and reports its trouble at the very character.
func (r *reader) scalar(n *Node, path string, read func() error) {
	if n.Kind != Scalar {
		r.refuse(path, n.place(), "needs_value", "part", orThis(path), "held", n.what())
		return
	}
	switch err := read(); {
	case errors.Is(err, errNoUnit):
		r.refuseUnitless(n, path)
	case err != nil:
		at := n.place()
		at.column += offsetIn(n, err)
		r.refuse(path, at, "at", "part", orThis(path), "why", message.Of(err))
	}
}

// refuseUnitless deals with a number that lacks a unit in a job that states
// none: one message for all of them, at the first.
func (r *reader) refuseUnitless(n *Node, path string) {
	r.faulty = append(r.faulty, path)
	if !r.unitless {
		r.unitless = true
		r.refuse(path, n.place(), "unit_none", "part", orThis(path), "value", n.Value)
	}
}
