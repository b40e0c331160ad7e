package schema

import _ "embed"

// Plan is the schema's text.
//
//go:embed plan.schema.json
var Plan []byte
