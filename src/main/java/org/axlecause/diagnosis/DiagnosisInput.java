package org.axlecause.diagnosis;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Vehicle;

/**
 * What is known when causes are weighed; the order of the lists does not count.
 *
 * @param vehicle the vehicle
 * @param day day of the presentation
 * @param weights by what weights causes are weighed
 * @param symptoms symptoms that show
 * @param observable symptoms that could have shown
 * @param findings findings of before and during the work
 * @param proofs causes that are proved
 * @param refutations causes that are ruled out
 * @param explainedAway causes that fall to the background
 * @param likelier causes that circumstances make likelier
 * @param openedAxles axles whose drum or calliper is off
 * @param danger whether a running leak, a sinking pedal or fluid not visible stands on record
 * @param openingBarred whether no wheel is to be opened yet
 */
public record DiagnosisInput(
        Vehicle vehicle,
        LocalDate day,
        CauseWeights weights,
        List<Symptom> symptoms,
        List<SymptomObservable> observable,
        List<Finding> findings,
        List<Proof> proofs,
        List<Refutation> refutations,
        List<ExplainedAway> explainedAway,
        List<Likelier> likelier,
        Set<Integer> openedAxles,
        boolean danger,
        boolean openingBarred) {

    public DiagnosisInput {
        symptoms = List.copyOf(symptoms);
        observable = List.copyOf(observable);
        findings = List.copyOf(findings);
        proofs = List.copyOf(proofs);
        refutations = List.copyOf(refutations);
        explainedAway = List.copyOf(explainedAway);
        likelier = List.copyOf(likelier);
        openedAxles = Set.copyOf(openedAxles);
    }
}
