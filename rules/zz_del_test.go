package rules

import (
	"bytes"
	"fmt"
	"os"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/facts"
)

func paths(v any, at []any, f func([]any)) {
	switch x := v.(type) {
	case map[string]any:
		for k, w := range x {
			p := append(append([]any{}, at...), k)
			f(p)
			paths(w, p, f)
		}
	case []map[string]any:
		for i, w := range x {
			p := append(append([]any{}, at...), i)
			f(p)
			paths(w, p, f)
		}
	case []any:
		for i, w := range x {
			p := append(append([]any{}, at...), i)
			if _, ok := w.(map[string]any); ok {
				f(p)
			}
			paths(w, p, f)
		}
	}
}

func del(v any, p []any) any {
	switch x := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for k, w := range x {
			if k == p[0] {
				if len(p) == 1 {
					continue
				}
				w = del(w, p[1:])
			}
			out[k] = w
		}
		return out
	case []map[string]any:
		out := []map[string]any{}
		for i, w := range x {
			if i == p[0] {
				if len(p) == 1 {
					continue
				}
				w = del(w, p[1:]).(map[string]any)
			}
			out = append(out, w)
		}
		return out
	case []any:
		out := []any{}
		for i, w := range x {
			if i == p[0] {
				if len(p) == 1 {
					continue
				}
				w = del(w, p[1:])
			}
			out = append(out, w)
		}
		return out
	}
	return v
}

func TestZZ(t *testing.T) {
	l := NewLibrary(os.ReadFile)
	e, err := l.Pack(os.Getenv("ZZPACK"))
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, r := range e.Rules {
		for _, s := range r.Samples {
			if s.Expect != "fail" && s.Expect != "open" && s.Expect != "review" {
				continue
			}
			name := s.Base
			if name == "" {
				name = r.base
			}
			text, _ := overlay(e.Bases[name].Part.Design, s.With, s.Without)
			m, _ := values("x", string(text))
			paths(m, nil, func(p []any) {
				var b bytes.Buffer
				toml.NewEncoder(&b).Encode(del(m, p))
				d, problems := design.Load("x", b.Bytes())
				if len(problems) > 0 {
					return
				}
				n++
				got := worst(r.Ask(facts.Of(d)))
				if got == Pass || got == NotApplicable {
					fmt.Println(r.ID, "|", s.Expect, "->", got, "|", s.Name, "| without", p)
				}
			})
		}
	}
	fmt.Println(n, "deletions")
}
