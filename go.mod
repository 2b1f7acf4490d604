module github.com/ventlint/ventlint

go 1.26

require (
	github.com/BurntSushi/toml v1.6.0 // indirect
	github.com/expr-lang/expr v1.17.8 // indirect
	github.com/fatih/color v1.19.0 // indirect
	github.com/mattn/go-colorable v0.1.14 // indirect
	github.com/mattn/go-isatty v0.0.20 // indirect
	github.com/stretchr/testify v1.12.1 // indirect
	golang.org/x/sys v0.42.0 // indirect
)
