package org.axlecause.bench;

import java.util.List;

/** A measurement of the packaged service as a whole, which {@code -Donly} names by its class as it does a benchmark. */
public interface ServiceRun {

    /** Runs it; what it measured, in the order of the table. */
    List<Measured> run() throws Exception;
}
