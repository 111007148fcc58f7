package plan

import _ "embed" // for the schema

// Schema is the JSON Schema (draft 2020-12) of plan.json.
//
//go:embed plan.schema.json
var Schema []byte
