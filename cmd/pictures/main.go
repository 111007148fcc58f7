// Command pictures draws the pictures of the README from the demonstration records, into
// the folder named.
package main

import (
	"context"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/patterns/plan"
	"understructure/patterns/preview"
	"understructure/patterns/sheet"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "pictures: name the folder to draw into")
		os.Exit(2)
	}
	if err := draw(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "pictures:", err)
		os.Exit(1)
	}
}

func draw(folder string) error {
	padded, err := compute("assets/demo-1872-bodice.json")
	if err != nil {
		return err
	}
	stacked, err := compute("assets/demo-three-values.json")
	if err != nil {
		return err
	}
	pages, err := sheet.Lay(context.Background(), padded, sheet.Options{})
	if err != nil {
		return err
	}
	const pxPerMM = 1.5
	for name, img := range map[string]image.Image{
		"padded-front.png": preview.Elevation(padded, "front", 560, 720),
		"padded-side.png":  preview.Elevation(padded, "side", 560, 720),
		"padded-bust.png":  preview.Section(padded, "bust", 560, 480),
		"slices-front.png": preview.Elevation(stacked, "front", 560, 720),
		"template.png":     preview.Page(pages[1], pxPerMM),
	} {
		if err := save(filepath.Join(folder, name), img); err != nil {
			return err
		}
	}
	return nil
}

func compute(path string) (plan.Plan, error) {
	r, err := record.Load(path)
	if err != nil {
		return plan.Plan{}, err
	}
	return pipeline.Run(context.Background(), r, nil)
}

func save(path string, img image.Image) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := png.Encode(f, img); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
