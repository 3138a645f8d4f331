using Lanewright.Documents;

namespace Lanewright.Proof;

/// <summary>Certificates as files, sealed where there is a key.</summary>
internal static class SealedFiles
{
    internal static byte[] Pdf(Certificate certificate, Paper paper, YardKey? key)
    {
        var bytes = CertificatePdf.Draw(certificate, paper);
        return key is null ? bytes : Seal.Pdf(bytes, Statement.Write(certificate), key);
    }

    internal static byte[] Xml(Certificate certificate, YardKey? key)
    {
        var bytes = DigitalCertificate.Write(certificate);
        return key is null ? bytes : Seal.Xml(bytes, Statement.Write(certificate), key);
    }
}
