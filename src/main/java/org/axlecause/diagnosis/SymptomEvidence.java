package org.axlecause.diagnosis;

import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/**
 * A symptom as evidence.
 *
 * @param code its code
 * @param text what shows
 * @param level kind of place it is looked for at
 * @param leak chance that it shows although no cause of the model is there
 * @param eachWheel symptom of single wheels that it stands for; null where it stands for itself
 */
public record SymptomEvidence(
        SymptomCode code,
        String text,
        Level level,
        double leak,
        @Nullable SymptomCode eachWheel) {}
