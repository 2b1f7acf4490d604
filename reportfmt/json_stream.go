package reportfmt

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// jsonStream reads JSON piece by piece. Of a document of any size it holds one value
// that is asked for, and no large one.
type jsonStream struct {
	*json.Decoder
	from  io.Reader
	taken int64 // bytes that the decoder has got
	lines int   // line ends among them
}

// largestValue is far beyond what a report says of one result.
const largestValue = 16 << 20

var errLargeValue = fmt.Errorf("found a value of more than %d MiB", largestValue>>20)

func newJSONStream(from io.Reader) *jsonStream {
	s := &jsonStream{from: from}
	s.Decoder = json.NewDecoder(s)
	return s
}

// Read gives the decoder more of the document.
func (s *jsonStream) Read(p []byte) (int, error) {
	if s.Decoder != nil && s.taken-s.InputOffset() > largestValue {
		return 0, errLargeValue
	}
	n, err := s.from.Read(p)
	s.taken += int64(n)
	s.lines += bytes.Count(p[:n], []byte("\n"))
	return n, err
}

// line is that of the next value.
func (s *jsonStream) line() int {
	ahead, _ := io.ReadAll(s.Buffered())
	return 1 + s.lines - bytes.Count(ahead, []byte("\n"))
}

// object hands over the keys of the object that comes; take reads the value of each.
func (s *jsonStream) object(take func(key string) error) error {
	if there, err := s.opens('{'); !there {
		return err
	}
	for s.More() {
		key, err := s.Token()
		if err != nil {
			return err
		}
		if err := take(key.(string)); err != nil {
			var other *otherKind
			if errors.As(err, &other) && other.key == "" {
				other.key = key.(string)
			}
			return err
		}
	}
	_, err := s.Token()
	return err
}

// list hands over the elements of the list that comes; take reads each.
func (s *jsonStream) list(take func() error) error {
	if there, err := s.opens('['); !there {
		return err
	}
	for s.More() {
		err := take()
		var other *otherKind
		if errors.As(err, &other) && other.key == "" {
			return errNoReport
		}
		if err != nil {
			return err
		}
	}
	_, err := s.Token()
	return err
}

// opens reads the beginning of an object or list; a null is none.
func (s *jsonStream) opens(bracket json.Delim) (there bool, err error) {
	token, err := s.Token()
	if err != nil || token == nil {
		return false, err
	}
	if token == bracket {
		return true, nil
	}
	return false, &otherKind{found: wordFor(token)}
}

// skip passes over a value.
func (s *jsonStream) skip() error {
	for depth := 0; ; {
		token, err := s.Token()
		if err != nil {
			return err
		}
		switch token {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth == 0 {
			return nil
		}
	}
}

// end demands that nothing comes after the document.
func (s *jsonStream) end() error {
	if _, err := s.Token(); err == nil {
		return errors.New("found more behind the report")
	} else if err != io.EOF {
		return err
	}
	return nil
}

// otherKind says that a key holds another kind of value than a report has there.
type otherKind struct{ key, found string }

func (e *otherKind) Error() string {
	if e.key == "" {
		return errNoReport.Error()
	}
	return fmt.Sprintf("%.64q is a %s: %v", e.key, e.found, errNoReport)
}

// wordFor is what JSON calls the kind of a token.
func wordFor(token json.Token) string {
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return "object"
		}
		return "array"
	case bool:
		return "bool"
	case float64:
		return "number"
	}
	return "string"
}
