package moistair

import (
	"cmp"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const (
	mostFlow     q.Flow  = 100   // m3/s
	mostTransfer q.Ratio = 0.999 // a unit that recirculates everything delivers nothing
)

// NetOutdoorFlow is the outdoor air in a supply flow that carries some exhaust
// air over: net = gross (1 - transfer). The exhaust air transfer ratio is from
// tracer gas, (c2 - c1)/(c3 - c1), from 0 to 1. Source: AHRI 1060 and ASHRAE 84,
// from memory.
func NetOutdoorFlow(gross q.Flow, transfer q.Ratio) (q.Flow, error) {
	err := cmp.Or(bounds.Check("supply flow", gross, 0, mostFlow), bounds.Check("exhaust air transfer ratio", transfer, 0, 1))
	if err != nil {
		return 0, err
	}
	return gross * q.Flow(1-bounds.Clamp(transfer, 0, 1)), nil
}

// GrossSupplyFlow is the supply flow that brings a net flow of outdoor air: the
// inverse of NetOutdoorFlow, for a transfer up to 0.999.
func GrossSupplyFlow(net q.Flow, transfer q.Ratio) (q.Flow, error) {
	err := cmp.Or(bounds.Check("net outdoor flow", net, 0, mostFlow), bounds.Check("exhaust air transfer ratio", transfer, 0, mostTransfer))
	if err != nil {
		return 0, err
	}
	return net / q.Flow(1-max(transfer, 0)), nil
}

// AfterDefrost is the hourly average of a flow that stops for defrosting during
// a part of each hour: flow (60 min - defrost)/60 min. Source: Minnesota Rules
// 1322.1104, which counts only the flow after such reductions.
func AfterDefrost(flow q.Flow, perHour q.Duration) (q.Flow, error) {
	const hour q.Duration = 3600
	err := cmp.Or(bounds.Check("flow", flow, 0, mostFlow), bounds.Check("defrost time per hour", perHour, 0, hour))
	if err != nil {
		return 0, err
	}
	return flow * q.Flow(1-bounds.Clamp(perHour, 0, hour)/hour), nil
}
