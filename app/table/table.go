// Package table holds the measurements of many records as a table for a spreadsheet, in comma-separated
// values (RFC 4180): one row a record, one column a value, headed by the value's path in a record, such as
// garment.bodice.waist_girth. A row that begins with # is a remark. Several readings of one measure stand in one
// cell with | between them. How a mount is to be built, fittings and photographs have no place in a table.
//
// What is possible is decided by package record alone: a row is read as the draft of a record.
// It does not open files.
package table

import (
	"strings"

	"understructure/app/record"
)

// Row is one record of a table and the name of its file, without the ending.
type Row struct {
	Name   string
	Record record.Record
}

// The most that a table may hold.
const (
	largest  = 4 << 20 // bytes
	mostRows = 5000
)

// Comma is how numbers and columns are divided.
type Comma bool

// Where numbers have a decimal point, a comma divides columns; where they have a decimal comma, a semicolon does,
// as spreadsheets do that are set to a language with that habit.
const (
	Point        Comma = false
	DecimalComma Comma = true
)

func (c Comma) between() rune {
	if c == DecimalComma {
		return ';'
	}
	return ','
}

// Number writes a number that has a decimal point.
func (c Comma) Number(point string) string {
	if c == DecimalComma {
		return strings.Replace(point, ".", ",", 1)
	}
	return point
}

// readings divides several readings in one cell; a slash would be taken for a date.
const readings = "|"

// remark begins a row that is for people.
const remark = "#"
