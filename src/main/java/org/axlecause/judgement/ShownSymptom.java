package org.axlecause.judgement;

import java.util.List;
import org.axlecause.facts.Place;
import org.axlecause.facts.Reason;
import org.axlecause.facts.Strength;
import org.axlecause.facts.SymptomCode;

/**
 * A symptom as the case document shows it.
 *
 * @param code what shows
 * @param place where
 * @param strength how clearly
 * @param because grounds
 */
public record ShownSymptom(SymptomCode code, Place place, Strength strength, List<Reason> because) {}
