package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.stream.Collectors;
import org.axlecause.shared.TenantTransaction;

/** Tells what people call the bearers of keys. */
@ApplicationScoped
public class KeyNames {

    private final KeyStore keys;
    private final TenantTransaction transaction;

    KeyNames(KeyStore keys, TenantTransaction transaction) {
        this.keys = keys;
        this.transaction = transaction;
    }

    /** Names of the keys of the actor's tenant, by the ids that stand beside what their bearers did. */
    public Map<String, String> of(Actor actor) {
        return transaction.call(
                actor.tenant(),
                () -> keys.views().stream()
                        .collect(Collectors.toMap(KeysResource.KeyView::key, KeysResource.KeyView::name)));
    }
}
