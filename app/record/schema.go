package record

import _ "embed" // for the schema

// Schema is the JSON Schema (draft 2020-12) of a record. It says what Decode says, but for
// what no schema can: that no key stands twice.
//
//go:embed record.schema.json
var Schema []byte
