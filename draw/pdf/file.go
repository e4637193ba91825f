package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"

	"firstdrop/measure"
)

// file is the objects of a PDF file in the making (7.5).
type file struct{ objects []object }

// object is one object: a dictionary or array, and the bytes of a stream.
type object struct {
	body   string
	stream []byte
	isData bool
}

// reserve returns the number of an object that is set later.
func (f *file) reserve() int {
	f.objects = append(f.objects, object{})
	return len(f.objects)
}

func (f *file) set(id int, body string) { f.objects[id-1].body = body }

func (f *file) add(body string) int {
	id := f.reserve()
	f.set(id, body)
	return id
}

// addStream adds a stream, compressed; entries are more of its dictionary.
func (f *file) addStream(entries string, data []byte) int {
	return f.addPlain(entries+"/Filter/FlateDecode", deflated(data))
}

// addPlain adds a stream as it is.
func (f *file) addPlain(entries string, data []byte) int {
	f.objects = append(f.objects, object{body: fmt.Sprintf("<<%s/Length %d>>", entries, len(data)), stream: data, isData: true})
	return len(f.objects)
}

func deflated(data []byte) []byte {
	var b bytes.Buffer
	z, _ := zlib.NewWriterLevel(&b, zlib.BestCompression) // the level is one that exists
	_, _ = z.Write(data)                                  // a bytes.Buffer never fails
	_ = z.Close()
	return b.Bytes()
}

// most is how many objects an object stream holds.
const most = 200

// write writes the file. Objects that are no streams are packed into compressed
// ones, and where each stands is told by a stream too (7.5.7 and 7.5.8).
func (f *file) write(w io.Writer, catalog, info int) error {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	refs := make([][3]int, len(f.objects)+1) // kind, place, index
	refs[0] = [3]int{0, 0, 65535}
	var packed []int
	for id := 1; id <= len(f.objects); id++ {
		if !f.objects[id-1].isData {
			packed = append(packed, id)
		}
	}
	for len(packed) > 0 {
		n := min(most, len(packed))
		holder := f.pack(packed[:n])
		for i, id := range packed[:n] {
			refs[id] = [3]int{2, holder, i}
		}
		packed = packed[n:]
	}
	for id := 1; id <= len(f.objects); id++ {
		if o := &f.objects[id-1]; o.isData {
			for len(refs) <= id {
				refs = append(refs, [3]int{})
			}
			refs[id] = [3]int{1, b.Len(), 0}
			fmt.Fprintf(&b, "%d 0 obj\n%s\nstream\n", id, o.body)
			b.Write(o.stream)
			b.WriteString("\nendstream\nendobj\n")
		}
	}
	f.closing(&b, refs, catalog, info)
	_, err := w.Write(b.Bytes())
	return err
}

// pack puts objects into an object stream and returns its number.
func (f *file) pack(ids []int) int {
	var head, body strings.Builder
	for _, id := range ids {
		fmt.Fprintf(&head, "%d %d ", id, body.Len())
		body.WriteString(f.objects[id-1].body + "\n")
	}
	return f.addStream(fmt.Sprintf("/Type/ObjStm/N %d/First %d", len(ids), head.Len()), []byte(head.String()+body.String()))
}

// closing writes the cross-reference stream and the end of the file.
func (f *file) closing(b *bytes.Buffer, refs [][3]int, catalog, info int) {
	start := b.Len()
	refs = append(refs, [3]int{1, start, 0})
	var table []byte
	for _, r := range refs {
		table = append(table, byte(r[0]), byte(r[1]>>24), byte(r[1]>>16), byte(r[1]>>8), byte(r[1]), byte(r[2]>>8), byte(r[2]))
	}
	sum := sha256.Sum256(b.Bytes())
	data := deflated(table)
	fmt.Fprintf(b, "%d 0 obj\n<</Type/XRef/Size %d/W[1 4 2]/Root %d 0 R/Info %d 0 R/ID[<%x><%x>]/Filter/FlateDecode/Length %d>>\nstream\n",
		len(refs)-1, len(refs), catalog, info, sum[:16], sum[:16], len(data))
	b.Write(data)
	fmt.Fprintf(b, "\nendstream\nendobj\nstartxref\n%d\n%%%%EOF\n", start)
}

// words returns text as a string object in UTF-16 (7.9.2.2).
func words(text string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}

// points returns a length in points of 1/72 in, to a hundred thousandth.
func points(l measure.Length) string {
	n, sign := l.Scaled(72*100_000, int64(measure.Inch)), ""
	if n < 0 {
		n, sign = -n, "-"
	}
	return sign + trimmed(fmt.Sprintf("%d.%05d", int64(n/100_000), int64(n%100_000)))
}

// trimmed returns a decimal without zeros at its end.
func trimmed(s string) string { return strings.TrimSuffix(strings.TrimRight(s, "0"), ".") }

// millimetres writes a length as an exact decimal number of millimetres.
func millimetres(l measure.Length) string { return strings.TrimSuffix(l.String(), " mm") }
