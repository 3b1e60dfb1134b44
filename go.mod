module borewright.example

go 1.24.0

require (
	github.com/shopspring/decimal v1.6.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
)
