package reportfmt

import (
	"net/url"
	"path"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// sourceRoot is the base of relative addresses, by the convention that the
// standard mentions.
const sourceRoot = "%SRCROOT%"

// sarifPhysicalOf has no region for what is about a file as a whole.
func sarifPhysicalOf(file string, at document.Position) sarifPhysical {
	p := sarifPhysical{Artifact: sarifArtifactOf(file)}
	if at.Line > 0 {
		p.Region = sarifRegionOf(at)
	}
	return p
}

// sarifRegionOf stays on one line: hosts show an alert on a change only when all
// its lines changed.
func sarifRegionOf(at document.Position) *sarifRegion {
	at = inFile(at)
	return &sarifRegion{StartLine: at.Line, StartColumn: at.Column, EndLine: at.Line, EndColumn: at.EndColumn}
}

// sarifArtifactOf gives a relative address below the source root. A file that
// the caller names absolutely keeps its place, and then must have no base.
func sarifArtifactOf(file string) sarifArtifact {
	if drive := len(file) > 2 && file[1:3] == ":/"; drive || path.IsAbs(file) {
		address := url.URL{Scheme: "file", Path: "/" + strings.TrimPrefix(file, "/")}
		return sarifArtifact{URI: address.String()}
	}
	address := url.URL{Path: path.Clean(file)}
	return sarifArtifact{URI: address.String(), URIBaseID: sourceRoot}
}

func sarifLogicalOf(pointer string) []sarifLogical {
	if pointer == "" {
		return nil
	}
	return []sarifLogical{{FullyQualifiedName: pointer}}
}
