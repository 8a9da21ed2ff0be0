package org.axlecause.outbound;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Signs a message by Standard Webhooks 1.0.0: HMAC-SHA256 over id, time and body, once for each valid secret. */
final class Signature {

    private static final String MAC = "HmacSHA256";
    private static final String SCHEME = "v1,";

    private Signature() {}

    /** The value of the header {@code webhook-signature}. */
    static String of(String id, long seconds, String body, List<Secret> secrets) {
        byte[] signed = (id + '.' + seconds + '.' + body).getBytes(StandardCharsets.UTF_8);
        return secrets.stream()
                .map(secret -> SCHEME + Base64.getEncoder().encodeToString(hmac(secret, signed)))
                .collect(Collectors.joining(" "));
    }

    private static byte[] hmac(Secret secret, byte[] signed) {
        try {
            Mac mac = Mac.getInstance(MAC);
            mac.init(new SecretKeySpec(secret.bytes(), MAC));
            return mac.doFinal(signed);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java platform has HMAC with SHA-256", e);
        }
    }
}
