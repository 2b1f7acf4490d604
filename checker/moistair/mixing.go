package moistair

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Stream is air that flows; Mass is its dry air.
type Stream struct {
	Air  State
	Mass MassFlow
}

// Mixture is what streams make together. Mass is the dry air. Fog is water that
// the mixed air cannot hold as vapor; Air is then saturated.
type Mixture struct {
	Stream
	Fog Condensate
}

// Mix joins streams of one pressure without heat from outside: dry air, water
// and enthalpy are sums. Without fog the temperature is nearly the mean by
// mass, T_return + (m_outdoor/m)(T_outdoor - T_return) for outdoor air that joins
// return air. Mass flows are from 0.1 g/s to 100 kg/s.
func Mix(streams ...Stream) (Mixture, error) {
	if err := checkStreams(streams); err != nil {
		return Mixture{}, err
	}
	var mass, water, heat float64
	for _, s := range streams {
		mass += float64(s.Mass)
		water += float64(s.Mass) * s.Air.humidity
		heat += float64(s.Mass) * enthalpy(s.Air.dryBulb, s.Air.humidity)
	}
	p := streams[0].Air.pressure
	f := settle(heat/mass, water/mass, p)
	air, err := f.air(p)
	if err != nil {
		return Mixture{}, fmt.Errorf("mixed air: %w", err)
	}
	return Mixture{Stream{air, MassFlow(mass)}, f.condensate(mass)}, nil
}

func checkStreams(streams []Stream) error {
	if len(streams) == 0 {
		return errors.New("no air to mix, expected one stream or more")
	}
	for i, s := range streams {
		if err := cmp.Or(s.Air.check("air"), checkMass("air mass flow", s.Mass), samePressure(streams[0].Air, s.Air)); err != nil {
			return fmt.Errorf("stream %d: %w", i+1, err)
		}
	}
	return nil
}

func samePressure(a, b State) error {
	if q.Compare(a.pressure, b.pressure) != 0 {
		return fmt.Errorf("air pressure %q differs from the other air's %s, expected one place", b.Pressure().String(), a.Pressure())
	}
	return nil
}

func (f fog) air(p float64) (State, error) {
	return FromHumidityRatio(q.Temperature(f.temperature), HumidityRatio(f.vapor), q.Pressure(p))
}

func (f fog) condensate(mass float64) Condensate {
	return Condensate{MassFlow(mass * f.liquid), MassFlow(mass * f.ice)}
}

// LargestOutdoorShare is the largest share of outdoor air in a mixture with
// return air that keeps the mixture at a least temperature, by temperatures
// alone: (Treturn - Tleast)/(Treturn - Toutdoor). It is 1 where outdoor air is no
// colder than that, and 0 where return air is colder. Every cell of the
// National Building Code of Canada's Table 9.32.3.4 is this formula at 22 C
// return air, times the furnace flow.
func LargestOutdoorShare(outdoor, returned, least q.Temperature) (q.Ratio, error) {
	err := cmp.Or(
		bounds.Check("outdoor temperature", outdoor, Coldest, Hottest),
		bounds.Check("return air temperature", returned, Coldest, Hottest),
		bounds.Check("least mixed temperature", least, Coldest, Hottest))
	switch {
	case err != nil:
		return 0, err
	case q.Compare(float64(outdoor), float64(least)) >= 0:
		return 1, nil
	case returned <= least:
		return 0, nil
	}
	return q.Ratio((returned - least) / (returned - outdoor)), nil
}
