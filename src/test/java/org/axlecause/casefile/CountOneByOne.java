package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.axlecause.shared.TenantTransaction;

/** Counts invented cases as the judging of each counts it when it ends, a transaction for each. */
@ApplicationScoped
public class CountOneByOne {

    private final DrawnCaseStore drawn;
    private final CountedCaseStore counted;
    private final TenantTransaction transaction;

    CountOneByOne(DrawnCaseStore drawn, CountedCaseStore counted, TenantTransaction transaction) {
        this.drawn = drawn;
        this.counted = counted;
        this.transaction = transaction;
    }

    public void count(String tenant, List<DrawnCaseStore.Drawn> cases) {
        cases.forEach(each -> transaction.run(tenant, () -> counted.save(each.reference(), drawn.counted(each))));
    }
}
