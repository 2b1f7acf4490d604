package rules

import _ "embed"

// The packs that ship with the program. They are strings, since a file system of
// them would copy each file that it gives.
var (
	//go:embed packs/ashrae-62-2-2016.rules.toml
	ashrae6222016 string
	//go:embed packs/ashrae-62-2-2019.rules.toml
	ashrae6222019 string
	//go:embed packs/england-adf-2021.rules.toml
	englandAdf2021 string
	//go:embed packs/iecc-2018.rules.toml
	iecc2018 string
	//go:embed packs/iecc-2021.rules.toml
	iecc2021 string
	//go:embed packs/imc-2021.rules.toml
	imc2021 string
	//go:embed packs/irc-2018.rules.toml
	irc2018 string
	//go:embed packs/irc-2021.rules.toml
	irc2021 string
	//go:embed packs/irc-2024.rules.toml
	irc2024 string
	//go:embed packs/minnesota.rules.toml
	minnesota string
	//go:embed packs/nbc-2020.rules.toml
	nbc2020 string
	//go:embed packs/ontario-2012.rules.toml
	ontario2012 string
	//go:embed packs/ontario-2024.rules.toml
	ontario2024 string
	//go:embed packs/passive-house.rules.toml
	passiveHouse string
	//go:embed packs/practice.rules.toml
	practice string
	//go:embed packs/washington-2021.rules.toml
	washington2021 string
)

// shipped lists them by their ids, in order.
var shipped = []struct {
	id     string
	source *string
}{
	{"ashrae-62-2-2016", &ashrae6222016},
	{"ashrae-62-2-2019", &ashrae6222019},
	{"england-adf-2021", &englandAdf2021},
	{"iecc-2018", &iecc2018},
	{"iecc-2021", &iecc2021},
	{"imc-2021", &imc2021},
	{"irc-2018", &irc2018},
	{"irc-2021", &irc2021},
	{"irc-2024", &irc2024},
	{"minnesota", &minnesota},
	{"nbc-2020", &nbc2020},
	{"ontario-2012", &ontario2012},
	{"ontario-2024", &ontario2024},
	{"passive-house", &passiveHouse},
	{"practice", &practice},
	{"washington-2021", &washington2021},
}

// BuiltIn lists the ids of the packs that ship with the program, in order.
func BuiltIn() []string {
	ids := make([]string, len(shipped))
	for i, p := range shipped {
		ids[i] = p.id
	}
	return ids
}

// shippedPack gives the source of a pack that ships with the program.
func shippedPack(id string) (source string, known bool) {
	for _, p := range shipped {
		if p.id == id {
			return *p.source, true
		}
	}
	return "", false
}
