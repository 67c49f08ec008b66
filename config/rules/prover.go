package rules

type prover struct{}
