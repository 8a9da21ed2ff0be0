package org.axlecause.judgement;

import java.time.OffsetDateTime;
import org.axlecause.diagnosis.CauseWeights;

/** Knows by which weights the causes of a case are weighed. */
public interface WeightsChoice {

    /** The weights that the open transaction's tenant has in force at a moment; those of the book where it has none. */
    CauseWeights at(OffsetDateTime moment);
}
