// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package bore_test

import "testing"

// The simulations at full size: go test -tags deep -run Deep -v ./bore
const deepTrials = 60_000

func TestDeepDoubts(t *testing.T)      { doubtsAreTrue(t, deepTrials) }
func TestDeepVerdicts(t *testing.T)    { verdictsKeepTheirRisk(t, deepTrials/3) }
func TestDeepTrueOvality(t *testing.T) { trueOvalityKeepsItsRisk(t, deepTrials) }
func TestDeepShapes(t *testing.T)      { shapesKeepTheirRisk(t, deepTrials) }
func TestDeepFewPlanes(t *testing.T)   { taperOfFewPlanesKeepsItsRisk(t, deepTrials/3) }
func TestDeepWearRate(t *testing.T)    { wearRateKeepsItsRisk(t, deepTrials) }
