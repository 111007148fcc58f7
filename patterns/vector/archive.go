package vector

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"understructure/assets/colour"
	"understructure/assets/fonts"
)

// Archives ask that a file keeps its colours, its letters and what it says of itself: PDF/A-2b (ISO 19005-2:2011). The
// library does most of it; what it leaves out is added here at the end.

// family is how the library is told of a font. It writes utf8 before the name, which thus becomes as long as the tag
// that the name of an incomplete font must begin with (ISO 32000-1:2008, 9.6.4).
func family(f *fonts.Face) string { return "xx+" + strings.ToLower(f.Name) }

const tag = "UNDSTR"

// describe puts into the library what the file says of itself and which colours are meant.
func (b *Book) describe() {
	b.pdf.SetXmpMetadata(b.meta.packet())
	b.pdf.AddOutputIntent(fpdf.OutputIntentType{SubtypeIdent: fpdf.OutputIntent_GTS_PDFA1, OutputConditionIdentifier: "sRGB IEC61966-2.1", ICCProfile: colour.SRGB})
}

// finished adds what the library leaves out: the tags of incomplete fonts, a name for the set of layers that is shown,
// the wish to be printed at 100 %, and an identity, which follows from the content. It also mends where the file's own
// dictionary is: the library forgets that the colours stand behind it. Only the last object grows, the root,
// so that no other is to be found elsewhere.
func (b *Book) finished(pdf []byte) []byte {
	for _, f := range []*fonts.Face{fonts.Bold, fonts.Regular} { // the name of one begins like that of the other
		pdf = bytes.ReplaceAll(pdf, []byte("/utf8"+family(f)), []byte("/"+tag+"+"+f.Name))
	}
	root, table, trailer := bytes.LastIndex(pdf, []byte("<<\n/Type /Catalog\n")), bytes.LastIndex(pdf, []byte("xref\n0 ")), bytes.LastIndex(pdf, []byte("trailer\n"))
	catalog := bytes.Replace(pdf[root:table], []byte("/D <<"), []byte("/D <</Name (Layers) "), 1)
	if b.trueSize {
		catalog = bytes.Replace(catalog, []byte("<<\n"), []byte("<<\n/Version /1.7\n/ViewerPreferences <</PrintScaling /None>>\n"), 1)
	}
	var objects, last, info int
	fmt.Sscanf(string(pdf[trailer:]), "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n", &objects, &last, &info)
	id := sha256.Sum256(pdf)
	end := fmt.Sprintf("trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n/ID [<%x> <%x>]\n>>\nstartxref\n%d\n%%%%EOF\n",
		objects, last, info-1, id[:16], id[:16], root+len(catalog))
	return slices.Concat(pdf[:root], catalog, pdf[table:trailer], []byte(end))
}

// packet is what the file says of itself, as XMP (ISO 16684-1:2012). It says the same as the file's older dictionary.
func (m Meta) packet() []byte {
	const date = "2006-01-02T15:04:05-07:00"
	var b bytes.Buffer
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n" +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"` +
		` xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">` + "\n")
	put(&b, "dc:format", "application/pdf", "")
	put(&b, "dc:title", m.Title, "Alt")
	put(&b, "dc:description", m.Subject, "Alt")
	put(&b, "dc:language", language, "Bag")
	put(&b, "xmp:CreatorTool", creator, "")
	put(&b, "pdf:Producer", creator, "")
	put(&b, "xmp:CreateDate", written.Format(date), "")
	put(&b, "xmp:ModifyDate", written.Format(date), "")
	put(&b, "pdfaid:part", "2", "")
	put(&b, "pdfaid:conformance", "B", "")
	b.WriteString("</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>")
	return b.Bytes()
}

// put writes a property, where it has a value, alone or as the only member of a collection.
func put(w io.StringWriter, name, value, collection string) {
	if value == "" {
		return
	}
	var text bytes.Buffer
	xml.EscapeText(&text, []byte(value))
	inside := text.String()
	switch collection {
	case "Alt":
		inside = `<rdf:Alt><rdf:li xml:lang="x-default">` + inside + "</rdf:li></rdf:Alt>"
	case "Bag":
		inside = "<rdf:Bag><rdf:li>" + inside + "</rdf:li></rdf:Bag>"
	}
	w.WriteString("<" + name + ">" + inside + "</" + name + ">\n")
}
