package moistair

import (
	"cmp"
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Rating is the point at which a sensible recovery efficiency was listed. Mass
// flows are dry air, fan powers those of the supply and the exhaust stream.
type Rating struct {
	Supply, Exhaust       MassFlow
	SupplyFan, ExhaustFan q.Power
	Outdoor, Indoor       q.Temperature
}

// BalancedRating is the usual winter rating point: equal flows of standard air,
// half of the unit's power in each stream, 0 C outdoors and 22 C indoors. Source:
// CSA C439, by a public energy model that quotes it.
func BalancedRating(flow q.Flow, power q.Power) (Rating, error) {
	m, err := StandardMassFlow(flow)
	if err != nil {
		return Rating{}, err
	}
	r := Rating{m, m, power / 2, power / 2, freezing, freezing + 22}
	return r, r.check()
}

// Apparent turns a sensible recovery efficiency (SRE), which leaves fan energy
// out, into apparent sensible effectiveness (ASE), which predicts the supply
// temperature because fan heat is in it:
//
//	T_2 = T_1 + (SRE (m_e cp (T_3 - T_1) + P_e) + P_s)/(m_s cp)
//	ASE = (m_s/m_min) (T_2 - T_1)/(T_3 - T_1)
//
// cp is 1006 J/(kg K); SRE is from 0 to 1. The standard's further terms (case
// heat, defrost, leakage) are left out. Source: CSA C439 clauses 9.2.1 and
// 9.3.3.1, by a public energy model that quotes them; the factor for unequal
// flows is from memory.
func (r Rating) Apparent(sre q.Ratio) (q.Ratio, error) {
	if err := r.checkWith("sensible recovery efficiency", sre, 1); err != nil {
		return 0, err
	}
	rise := (float64(sre)*r.available() + float64(r.SupplyFan)) / (float64(r.Supply) * airHeat)
	return q.Ratio(rise / r.difference() / r.least()), nil
}

// Recovery turns apparent sensible effectiveness into sensible recovery
// efficiency: the inverse of Apparent, for 0 to 1.5.
func (r Rating) Recovery(ase q.Ratio) (q.Ratio, error) {
	if err := r.checkWith("apparent sensible effectiveness", ase, mostApparent); err != nil {
		return 0, err
	}
	heat := float64(ase)*r.least()*r.difference()*float64(r.Supply)*airHeat - float64(r.SupplyFan)
	return q.Ratio(heat / r.available()), nil
}

// CoreOnly takes the supply fan's heat out of apparent sensible effectiveness:
//
//	eps = (m_s/m_min) (T_2 - P_s/(m_s cp) - T_1)/(T_3 - T_1)
//
// for a fan after the core and ASE from 0 to 1.5; the result may be negative where
// the fan's heat alone makes up the ASE. Use it for a Core whose Operation states its fans.
// Source: as Apparent.
func (r Rating) CoreOnly(ase q.Ratio) (q.Ratio, error) {
	if err := r.checkWith("apparent sensible effectiveness", ase, mostApparent); err != nil {
		return 0, err
	}
	fan := float64(r.SupplyFan) / (float64(r.Supply) * airHeat) / r.difference() / r.least()
	return ase - q.Ratio(fan), nil
}

// available is the heat that SRE relates to.
func (r Rating) available() float64 {
	return float64(r.Exhaust)*airHeat*r.difference() + float64(r.ExhaustFan)
}

func (r Rating) difference() float64 { return float64(r.Indoor - r.Outdoor) }

// least is m_min/m_s.
func (r Rating) least() float64 { return float64(min(r.Supply, r.Exhaust) / r.Supply) }

const mostApparent q.Ratio = 1.5 // with fan heat, at small flows

func (r Rating) checkWith(what string, x, most q.Ratio) error {
	return cmp.Or(r.check(), bounds.Check(what, x, 0, most))
}

func (r Rating) check() error {
	err := cmp.Or(
		checkMass("supply mass flow", r.Supply),
		checkMass("exhaust mass flow", r.Exhaust),
		bounds.Check("supply fan power", r.SupplyFan, 0, mostFanPower),
		bounds.Check("exhaust fan power", r.ExhaustFan, 0, mostFanPower),
		bounds.Check("outdoor temperature", r.Outdoor, Coldest, Hottest),
		bounds.Check("indoor temperature", r.Indoor, Coldest, Hottest))
	if err == nil && r.Indoor-r.Outdoor < 1 {
		return fmt.Errorf("outdoor temperature %q of a rating is not below the indoor %s, expected 1 K or more", r.Outdoor.String(), r.Indoor)
	}
	return err
}
