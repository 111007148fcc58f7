package main

import (
	"fmt"
	"io"
	"os"

	"understructure/app/batch"
	"understructure/app/keep"
	"understructure/app/record"
	"understructure/app/store"
	"understructure/geometry/unit"
)

type match struct {
	Garments []string `arg:"" name:"garment" help:"The records of the garments, or folders of them. They need no form."`
	Forms    []string `required:"" sep:"none" placeholder:"FILE" help:"The forms in store: a file, or a folder of records; may be given more than once. A file is a record with a form, a list of forms (.json), or a table of measurements (.csv)."`
	CSV      string   `name:"csv" placeholder:"FILE.csv" help:"Write every garment on every form as a table as well."`
	Decimal  string   `enum:"point,comma" default:"point" help:"How numbers are written in that table: with a decimal point or a decimal comma."`
}

// Help is shown by --help.
func (match) Help() string {
	return "A form serves a garment where it lies inside the shape wanted under the garment everywhere, ease and cover included. Each form is used once: " +
		"as many garments as possible get one, with the least wadding for all of them together. The best form for each garment alone is named beside it, for those who dress one after the other.\n\n" +
		"A list of forms is { \"understructure\": 1, \"unit\": \"cm\", \"forms\": [ { \"label\": \"Form 3\", \"bodice\": { \"bust_girth\": 78, … } } ] }, with the keys of a record.\n\n" +
		"Exit status: 0 every garment has a form; 2 refused, or at least one record failed; 3 a garment is left without a form; 130 stopped."
}

// Run prints which form serves which garment.
func (m match) Run(s surroundings) error {
	stock, err := formsIn(m.Forms, s.errs)
	if err != nil {
		return err
	}
	items, err := batch.Find(m.Garments)
	if err != nil {
		return err
	}
	l := matching{forms: stock.Forms}
	for _, it := range items {
		r, err := record.LoadDraft(it.Path)
		if err == nil {
			err = store.Missing("garment.bodice", r.Garment.Bodice)
		}
		if err != nil {
			complain(s.errs, it.Path, err)
			continue
		}
		l.names, l.garments = append(l.names, it.Name), append(l.garments, r)
	}
	l.Match, err = store.Find(s.ctx, l.garments, l.forms, s.shape, func(done, all int) {
		s.progress(fmt.Sprintf("%d garments, %d forms,", len(l.garments), len(l.forms)), float64(done)/float64(all))
	})
	if err != nil {
		return err
	}
	s.progress("", 1)
	if m.CSV != "" {
		if err := keep.File(m.CSV, func(w io.Writer) error { return l.Table(w, l.names, l.labels(), decimal(m.Decimal)) }); err != nil {
			return err
		}
	}
	return l.report(s, len(items)-len(l.garments))
}

// formsIn reads the forms in store. Records that have none are passed over.
func formsIn(paths []string, errs io.Writer) (store.Stock, error) {
	var stock store.Stock
	for _, path := range paths {
		items := []batch.Item{{Path: path, Name: path}}
		if isFolder(path) {
			var err error
			if items, err = batch.Find([]string{path}); err != nil {
				return stock, err
			}
		}
		for _, it := range items {
			forms, err := formsOf(it.Path, errs)
			if err != nil {
				return stock, err
			}
			for i, f := range forms {
				if err := stock.Add(f, it.Path, fmt.Sprintf("%s, form %d", it.Name, i+1)); err != nil {
					return stock, err
				}
			}
		}
	}
	if len(stock.Forms) == 0 {
		return stock, fmt.Errorf("--forms: no form is measured there")
	}
	return stock, nil
}

// formsOf reads the forms of one file.
func formsOf(path string, errs io.Writer) ([]record.Form, error) {
	if ends(path, tableEnding) {
		return formsOfTable(path, errs)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	forms, err := store.ReadForms(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return forms, nil
}

func formsOfTable(path string, errs io.Writer) ([]record.Form, error) {
	rows, err := readTable(path, errs)
	if err != nil {
		return nil, err
	}
	var forms []record.Form
	for _, r := range rows {
		f := r.Record.Form
		if f == nil {
			continue
		}
		if f.Label == "" {
			f.Label = r.Name
		}
		if err := store.Missing("form.bodice", f.Bodice); err != nil {
			return nil, fmt.Errorf("%s: %s: %w", path, f.Label, err)
		}
		forms = append(forms, *f)
	}
	return forms, nil
}

// matching is a match with the names of garments and forms.
type matching struct {
	store.Match
	names    []string
	garments []record.Record
	forms    []record.Form
}

func (l matching) labels() []string {
	var all []string
	for _, f := range l.forms {
		all = append(all, f.Label)
	}
	return all
}

// report prints the table, and below it a sentence for what needs one.
func (l matching) report(s surroundings, failed int) error {
	rows := [][]string{{"garment", "form", "wadding (litres)", "best form alone", "wadding (litres)"}}
	without := 0
	for i, n := range l.names {
		if l.Chosen[i] < 0 {
			without++
		}
		row := []string{n}
		for _, j := range []int{l.Chosen[i], l.Best[i]} {
			row = append(row, l.served(i, j)...)
		}
		rows = append(rows, row)
	}
	align(s.out, rows)
	fmt.Fprintln(s.out)
	for i := range l.names {
		for _, sentence := range l.remarks(i) {
			fmt.Fprintf(s.out, "%s: %s\n", l.names[i], sentence)
		}
	}
	switch {
	case failed > 0:
		return exit{refused, fmt.Sprintf("%d of %d records failed", failed, failed+len(l.names))}
	case without > 0:
		return exit{wouldStrain, fmt.Sprintf("%d of %d garments are left without a form", without, len(l.names))}
	}
	return nil
}

// served are the cells for a garment on a form, or on none.
func (l matching) served(garment, form int) []string {
	if form < 0 {
		return []string{"–", "–"}
	}
	return []string{l.forms[form].Label, fmt.Sprintf("%.2f", l.Pairs[garment][form].Litres)}
}

// remarks say why a garment has no form, and what is to be known of the one that it has.
func (l matching) remarks(i int) []string {
	pairs, word := l.Pairs[i], l.garments[i].Unit
	size, _ := unit.Named(word)
	length := func(mm float64) string { return fmt.Sprintf("%.*f %s", places[word], mm/float64(size), word) }
	switch chosen, least := l.Chosen[i], l.Least[i]; {
	case chosen >= 0 && pairs[chosen].Short > 0:
		return []string{fmt.Sprintf("%s ends %s before the garment does; build it on there.", l.forms[chosen].Label, length(pairs[chosen].Short))}
	case chosen >= 0:
		return nil
	case l.Best[i] >= 0:
		return []string{"every form that serves it serves another garment; dress one after the other, or find a further form."}
	case least >= 0 && pairs[least].Squeeze > 0:
		return []string{fmt.Sprintf("no form serves; %s is least too big, by %s round at the %s. Squeeze or cut it there, or build a mount of slices.",
			l.forms[least].Label, length(pairs[least].Squeeze), pairs[least].Level)}
	case least >= 0:
		return []string{"no form serves; build a mount of slices."}
	}
	return []string{fmt.Sprintf("no mount can be computed: %v", pairs[0].Err)}
}
