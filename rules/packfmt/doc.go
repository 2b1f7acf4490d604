// Package packfmt writes effective packs: as one pack file without parents, as
// JSON, as Markdown, and the catalogue of all packs that ship with the program.
// Each part tells the pack that it comes from.
package packfmt
