package org.axlecause.bench;

import java.util.List;

/**
 * A measurement that the harness of the parts does not serve, such as of the packaged service as a whole; {@code -Donly}
 * names it by its class as it does a benchmark.
 */
public interface ServiceRun {

    /** Runs it; what it measured, in the order of the table. */
    List<Measured> run() throws Exception;
}
