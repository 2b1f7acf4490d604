package main

import (
	"bufio"
	"os"
	"path/filepath"

	"github.com/ventlint/ventlint/reportfmt"
)

// reporting is the reports of one run while they are written. Files stand beside
// those that they will be; what goes to standard output waits until all designs are
// reviewed.
type reporting struct {
	run     *reportfmt.Run
	shown   *scratch
	text    *bufio.Writer // to shown
	files   []*staged
	scratch []*scratch // of all reports
}

// begin begins all reports. The colours are of standard output alone.
func (d destinations) begin(s reportfmt.Setting, o reportfmt.Options) (*reporting, error) {
	r := &reporting{}
	r.shown = r.aside(os.TempDir())
	r.text = bufio.NewWriterSize(r.shown, atOnce)
	outputs := []reportfmt.Output{r.output(d.shown, r.text, os.TempDir())}
	outputs[0].Options = o
	for _, file := range d.files {
		s, err := stage(file.path)
		if err != nil {
			r.drop()
			return nil, err
		}
		r.files = append(r.files, s)
		outputs = append(outputs, r.output(file.form, s.text, filepath.Dir(file.path)))
	}
	r.run = reportfmt.Begin(s, outputs...)
	return r, nil
}

func (r *reporting) output(form reportfmt.Format, to writer, folder string) reportfmt.Output {
	return reportfmt.Output{Format: form, To: to, Aside: func() reportfmt.Scratch { return r.aside(folder) }}
}

// aside makes room for what waits for its place.
func (r *reporting) aside(folder string) *scratch {
	s := &scratch{folder: folder}
	r.scratch = append(r.scratch, s)
	return s
}

// end writes all reports or, where one cannot be written, no file.
func (r *reporting) end(m machine) error {
	err := r.run.End()
	if err == nil {
		err = r.text.Flush()
	}
	if err != nil {
		return plain(err)
	}
	for _, s := range r.files {
		if err := s.finish(); err != nil {
			return err
		}
	}
	if err := write(m, r.shown.copy); err != nil {
		return err
	}
	for _, s := range r.files {
		if err := s.commit(); err != nil {
			return err
		}
	}
	return nil
}

// drop leaves nothing behind but reports that were written.
func (r *reporting) drop() {
	for _, s := range r.files {
		s.drop()
	}
	for _, s := range r.scratch {
		s.drop()
	}
}
