package ui

import (
	"context"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"

	"understructure/app/folder"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// ready is what there is to export: the newest plan with no templates but those that change; nil while
// that is not known.
func (p *fittingPlace) ready() *plan.Plan {
	now, err := p.doc.Plan()
	changes := p.before.changesTo(p.doc.Record())
	if changes == nil || len(changes.Pieces) == 0 || p.doc.Busy() || err != nil {
		return nil
	}
	only := changes.Only(now)
	return &only
}

// export asks for a folder and writes the templates that change into a new one inside it.
func (p *fittingPlace) export() {
	w := p.window
	d := dialog.NewFolderOpen(func(f fyne.ListableURI, err error) {
		if err != nil {
			w.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		p.exportTo(filepath.Join(f.Path(), w.stem()+" changed templates"))
	}, w.win)
	d.SetTitleText(lang.L("Where shall the folder with the changed templates go?"))
	d.SetConfirmText(lang.L("Export here"))
	w.showFiles(d)
}

// exportTo writes them as the window writes a whole mount, but from the plan that is there.
func (p *fittingPlace) exportTo(to string) {
	only := p.ready()
	if only == nil {
		return
	}
	other := *p.window
	other.options.Export = func(ctx context.Context, _ record.Record, to string, progress Progress) error {
		return folder.Write(ctx, to, *only, func(done float64) { progress("writing", done) })
	}
	other.exportTo(to)
}
