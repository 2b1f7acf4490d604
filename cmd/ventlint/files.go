package main

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

const designSuffix = ".vent.toml"

// input is one design to read: a file, or standard input.
type input struct {
	path   string
	name   string // in reports: with forward slashes
	stdin  bool
	folder string // that was named and holds it; empty for a file that was named
}

// find lists the designs of the named files and folders, folders in the order
// of their paths. A folder without a design is an error: nothing would have been
// reviewed. Links inside folders are not followed, and folders inside that begin
// with a dot not entered: they hold what tools keep, such as copies of designs.
func find(paths []string, stdinName string) ([]input, error) {
	var inputs []input
	for _, p := range paths {
		if p == "-" {
			inputs = append(inputs, input{path: p, name: stdinName, stdin: true})
			continue
		}
		info, err := os.Stat(p)
		if err != nil {
			return nil, plain(err)
		}
		if !info.IsDir() {
			inputs = append(inputs, input{path: p, name: filepath.ToSlash(filepath.Clean(p))})
			continue
		}
		inside, err := search(p)
		if err != nil {
			return nil, err
		}
		inputs = append(inputs, inside...)
	}
	return distinct(inputs), nil
}

// search walks a folder, also one that is named by a link.
func search(folder string) ([]input, error) {
	var inputs []input
	inside := folder + string(filepath.Separator)
	err := filepath.WalkDir(inside, func(p string, entry fs.DirEntry, err error) error {
		if err != nil {
			return plain(err)
		}
		if entry.IsDir() && p != inside && strings.HasPrefix(entry.Name(), ".") {
			return fs.SkipDir
		}
		if entry.Type().IsRegular() && strings.HasSuffix(p, designSuffix) {
			inputs = append(inputs, input{path: p, name: filepath.ToSlash(filepath.Clean(p)), folder: folder})
		}
		return nil
	})
	if err == nil && len(inputs) == 0 {
		err = fmt.Errorf("%s: no design in this folder, expected files named *%s", folder, designSuffix)
	}
	sort.Slice(inputs, func(i, j int) bool { return inputs[i].name < inputs[j].name })
	return inputs, err
}

// distinct leaves out a design that was named twice.
func distinct(inputs []input) []input {
	seen := map[string]bool{}
	var kept []input
	for _, in := range inputs {
		if !seen[in.name] {
			seen[in.name] = true
			kept = append(kept, in)
		}
	}
	return kept
}

// largest is one byte more than a design or pack may have: enough to tell that
// it is too large.
const largest = 1<<20 + 1

func (in input) read(stdin io.Reader) ([]byte, error) {
	if in.stdin {
		return io.ReadAll(io.LimitReader(stdin, largest))
	}
	if in.folder == "" {
		return readFile(in.path)
	}
	inside, err := filepath.Rel(in.folder, in.path)
	if err != nil {
		return nil, err
	}
	file, err := os.OpenInRoot(in.folder, inside) // what has become a link since must not lead out
	return readAll(file, err)
}

func readFile(path string) ([]byte, error) { return readAll(os.Open(path)) }

// readAll reads a file that was opened, within bounds.
func readAll(file *os.File, err error) ([]byte, error) {
	if err != nil {
		return nil, plain(err)
	}
	defer file.Close()
	data, err := readUpTo(file, largest)
	return data, plain(err)
}

// readUpTo reads no more than so many bytes of a file, in one piece where its size is
// told.
func readUpTo(file *os.File, most int64) ([]byte, error) {
	about, err := file.Stat()
	if err != nil {
		return nil, err
	}
	var data bytes.Buffer
	data.Grow(int(min(about.Size(), most)) + bytes.MinRead)
	_, err = data.ReadFrom(io.LimitReader(file, most))
	return data.Bytes(), err
}

// plain words a failure of the file system: path, then what is wrong.
func plain(err error) error {
	if e, ok := err.(*fs.PathError); ok {
		return fmt.Errorf("%s: %v", e.Path, e.Err)
	}
	return err
}
