package folder

import (
	"context"
	"fmt"
	"io"
	"regexp"

	"understructure/geometry/rest"
	"understructure/patterns/condition"
	"understructure/patterns/cutting"
	"understructure/patterns/dxf"
	"understructure/patterns/keeping"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/report"
	"understructure/patterns/sheet"
	"understructure/patterns/solid"
	"understructure/patterns/vector"
)

// Write writes everything that is made from a plan into dir: plan.json, templates.pdf, svg/ID.svg and dxf/ID.dxf for
// every piece, record.pdf, materials.csv, cutting.pdf where the pieces are laid on their stock, storage.pdf and
// condition.pdf for the store room, and as bodies the mount and what holds the skirt, together in mount.obj and each in
// an STL of its own. See Put for what happens to files that are there already. done may be called often, with the share
// that is written.
func Write(ctx context.Context, dir string, p plan.Plan, done func(fraction float64)) error {
	files, err := made(ctx, p)
	if err != nil {
		return err
	}
	return Put(ctx, dir, files, done)
}

// Pages lays the pieces of a plan on its paper. progress is told how far it has come, and may be nil.
func Pages(ctx context.Context, p plan.Plan, progress func(done float64)) ([]sheet.Page, error) {
	return sheet.Lay(ctx, p, sheet.Options{Progress: progress})
}

// Templates writes pages of a plan as the PDF that is printed, unless the plan must not be. It stops
// between two pages when ctx ends.
func Templates(ctx context.Context, w io.Writer, p plan.Plan, pages []sheet.Page) error {
	if err := p.Refused(); err != nil {
		return err
	}
	b := vector.NewBook(meta(p, "templates"))
	for _, pg := range pages {
		if err := ctx.Err(); err != nil {
			return err
		}
		b.Sheet(pg)
	}
	return b.Write(w)
}

// safe is what every file system takes as a name and no shell as anything else.
var safe = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$`)

func made(ctx context.Context, p plan.Plan) ([]File, error) {
	if err := p.Refused(); err != nil {
		return nil, err
	}
	pages, err := Pages(ctx, p, nil)
	if err != nil {
		return nil, err
	}
	files := []File{
		{"plan.json", func(w io.Writer) error { return readable(w, p) }},
		{"record.pdf", func(w io.Writer) error { return report.Record(w, p) }},
		{"materials.csv", func(w io.Writer) error { return report.Materials(w, p) }},
	}
	if len(pages) > 0 { // a form that is too big everywhere gets no wadding, and paper without a page is no file
		files = append(files, File{"templates.pdf", func(w io.Writer) error { return Templates(ctx, w, p, pages) }})
	}
	if len(p.Layouts) > 0 {
		files = append(files, File{"cutting.pdf", func(w io.Writer) error { return cutting.Write(w, p, meta(p, "cutting")) }})
	}
	for _, pc := range p.Pieces {
		if !safe.MatchString(pc.ID) {
			return nil, fmt.Errorf("folder: piece %q: the ID is not a safe file name", pc.ID)
		}
		files = append(files, drawn(p, pc)...)
	}
	files = append(files, stored(p)...)
	models, err := modelled(p)
	return append(files, models...), err
}

// drawn are the files of one piece.
func drawn(p plan.Plan, pc piece.Piece) []File {
	return []File{
		{"svg/" + pc.ID + ".svg", func(w io.Writer) error { return vector.SVG(w, pc, meta(p, pc.Name)) }},
		{"dxf/" + pc.ID + ".dxf", func(w io.Writer) error { return dxf.Piece(w, pc) }},
	}
}

// stored are the papers for the store room; there are none where too little is known of the garment for its outline.
func stored(p plan.Plan) []File {
	if _, err := rest.Lie(p.Garment()); err != nil {
		return nil
	}
	return []File{
		{"storage.pdf", func(w io.Writer) error { return keeping.Write(w, p) }},
		{"condition.pdf", func(w io.Writer) error { return condition.Write(w, condition.Of(p)) }},
	}
}

// modelled are the files of the mount, and of what holds the skirt, as bodies.
func modelled(p plan.Plan) ([]File, error) {
	bodies, err := solid.Bodies(p)
	if err != nil || len(bodies) == 0 {
		return nil, err
	}
	files := []File{{"mount.obj", func(w io.Writer) error { return solid.OBJ(w, bodies...) }}}
	for _, b := range bodies {
		files = append(files, File{b.Name + ".stl", b.STL})
	}
	return files, nil
}

// meta is what a file says of itself to a viewer.
func meta(p plan.Plan, what string) vector.Meta {
	title := p.Object.Number
	if title == "" {
		title = p.Object.Title
	}
	if title != "" {
		title += ": "
	}
	return vector.Meta{Title: title + what, Subject: p.Object.Title}
}
