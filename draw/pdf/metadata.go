package pdf

import (
	"encoding/xml"
	"strings"
)

// metadata returns the document's title and language as XMP (ISO 16684-1), which
// readers ask first.
func metadata(title, lang string) []byte {
	escaped := func(s string) string {
		var b strings.Builder
		_ = xml.EscapeText(&b, []byte(s)) // a strings.Builder never fails
		return b.String()
	}
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">` +
		`<dc:title><rdf:Alt><rdf:li xml:lang="x-default">` + escaped(title) + `</rdf:li></rdf:Alt></dc:title>`)
	if lang != "" {
		b.WriteString(`<dc:language><rdf:Bag><rdf:li>` + escaped(lang) + `</rdf:li></rdf:Bag></dc:language>`)
	}
	b.WriteString(`<pdf:Producer>` + Producer + `</pdf:Producer></rdf:Description></rdf:RDF></x:xmpmeta>` + "\n<?xpacket end=\"r\"?>")
	return []byte(b.String())
}
